namespace AimTrainer.Domain;

/// <summary>How long an oil pattern may be for the rule of its exit board to make sense, in feet.</summary>
public static class PatternLength
{
    /// <summary>Shortest: its exit is board 1.</summary>
    public const double Shortest = 32;

    /// <summary>Longest: its exit is board 21, one past the middle of the lane.</summary>
    public const double Longest = 52;
}
