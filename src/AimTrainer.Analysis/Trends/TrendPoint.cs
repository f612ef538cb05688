namespace AimTrainer.Analysis;

/// <summary>One value of a series over sessions.</summary>
/// <param name="Session">Where it stands: the session's number, or any other finite number that grows.</param>
/// <param name="Value">The value; finite.</param>
public readonly record struct TrendPoint(double Session, double Value);
