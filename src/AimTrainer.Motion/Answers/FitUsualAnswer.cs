namespace AimTrainer.Motion;

/// <summary>How often a usual value stood in for one that was not measured, for machines.</summary>
/// <param name="What">Speed, revs, axis rotation or axis tilt.</param>
/// <param name="Shots">In so many shots.</param>
public sealed record FitUsualAnswer(string What, int Shots);
