namespace AimTrainer.Motion;

/// <summary>What observed shots tell of a bowler.</summary>
/// <param name="Bowler">Usual throw and scatter; null when they do not tell it.</param>
/// <param name="Shots">How many shots told of all four parts of the scatter.</param>
/// <param name="Problem">Why they do not tell it; null when they do.</param>
public sealed record RecordedBowler(AimBowler? Bowler, int Shots, string? Problem)
{
    /// <summary>The problem when no shot has an axis rotation and none was given.</summary>
    public const string NoRotation = "the record has no axis rotation";
}
