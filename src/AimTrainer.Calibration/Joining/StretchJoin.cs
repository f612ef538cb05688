using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What came of joining the stretches of several projectors.</summary>
/// <param name="Stretches">The stretches with their overlaps, in the order given; empty when they cannot be joined.</param>
/// <param name="Problems">Why they cannot, and what to do; empty when they can.</param>
public sealed record StretchJoin(ValueList<LaneStretch> Stretches, ValueList<string> Problems);
