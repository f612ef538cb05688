using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A file of points that a map is asked about.</summary>
/// <param name="Points">The points.</param>
public sealed record MapQuestions(ValueList<MapQuestion> Points);
