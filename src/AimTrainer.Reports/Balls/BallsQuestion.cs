using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>Which balls to compare, and on which sessions.</summary>
public sealed record BallsQuestion
{
    /// <summary>Whose sessions (name without regard to case); not needed where sessions are named.</summary>
    public string? Bowler { get; init; }

    /// <summary>Only these sessions, by their ids; empty takes the bowler's newest.</summary>
    public ValueList<string> SessionIds { get; init; } = [];

    /// <summary>Only these balls (without regard to case); empty takes every ball.</summary>
    public ValueList<string> Balls { get; init; } = [];

    /// <summary>The ball that the others are held against; null takes the first of <see cref="Balls"/>, else the ball that was thrown first.</summary>
    public string? Reference { get; init; }

    /// <summary>Sessions set up at this time or later; null for no limit.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Sessions set up before this time; null for no limit.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>Which throws count, beside what the drill says; null takes all.</summary>
    public ComparableLimits? Limits { get; init; }

    /// <summary>Up to where a difference does not matter.</summary>
    public BallsMargins Margins { get; init; } = new();
}
