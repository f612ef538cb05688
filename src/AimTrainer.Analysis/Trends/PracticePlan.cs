namespace AimTrainer.Analysis;

/// <summary>A program: weeks of sessions with a goal. It says how often and how near, never how much an arm can take.</summary>
public sealed record PracticePlan
{
    /// <summary>Most weeks.</summary>
    public const int MostWeeks = 104;

    /// <summary>Most sessions a week.</summary>
    public const int MostSessionsAWeek = 14;

    /// <summary>Smallest goal, boards.</summary>
    public const double SmallestGoal = 0.1;

    /// <summary>Largest goal, boards.</summary>
    public const double LargestGoal = 10;

    /// <summary>The first day of its first week (UTC).</summary>
    public required DateOnly Starts { get; init; }

    /// <summary>How many weeks, 1 to <see cref="MostWeeks"/>.</summary>
    public required int Weeks { get; init; }

    /// <summary>Planned sessions a week, 1 to <see cref="MostSessionsAWeek"/>.</summary>
    public required int SessionsAWeek { get; init; }

    /// <summary>The spread to reach, in boards (standard deviation); null without a goal.</summary>
    public double? GoalSpreadBoards { get; init; }

    /// <summary>At which distance the goal is measured, feet; null for the arrows.</summary>
    public double? GoalFeet { get; init; }
}
