namespace AimTrainer.Sessions;

/// <summary>Which sessions to list; what is null does not matter.</summary>
public sealed record SessionFilter
{
    /// <summary>Only this bowler's (name without regard to case).</summary>
    public string? Bowler { get; init; }

    /// <summary>Only this station's.</summary>
    public int? Station { get; init; }

    /// <summary>Only those that are over, or only those that are not.</summary>
    public bool? Ended { get; init; }

    /// <summary>At most so many, 1 or more.</summary>
    public int Limit { get; init; } = 100;
}
