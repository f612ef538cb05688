namespace AimTrainer.Analysis;

/// <summary>Where a bowler stands against a goal.</summary>
public enum GoalStanding
{
    /// <summary>Too few tests since the program began.</summary>
    NotKnown,

    /// <summary>All of the interval lies above the goal.</summary>
    NotYet,

    /// <summary>The goal lies within the interval.</summary>
    CannotTell,

    /// <summary>All of the interval lies at or below the goal.</summary>
    Reached,
}
