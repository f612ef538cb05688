using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A line that a drill is to be made of, and the throw that goes with it.</summary>
/// <param name="Arrows">Its target at the arrows.</param>
/// <param name="Downlane">Its target downlane.</param>
/// <param name="Expected">The throw: speed, revs, angle, laydown; what is null is left to the drill.</param>
public sealed record AimedLine(Crossing Arrows, Crossing Downlane, Baseline Expected);
