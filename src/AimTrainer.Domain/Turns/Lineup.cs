namespace AimTrainer.Domain;

/// <summary>The bowlers of one lane in the order in which they throw, and whose turn it is. Each has a session of their own.</summary>
public sealed record Lineup
{
    /// <summary>Most bowlers of one lane.</summary>
    public const int MostBowlers = 6;

    /// <summary>Most shots of one turn.</summary>
    public const int MostShotsATurn = 10;

    /// <summary>The station (lane), from 1.</summary>
    public required int Station { get; init; }

    /// <summary>Counts the changes that people made to it, from 1; whoever changes it says which one was seen.</summary>
    public required int Number { get; init; }

    /// <summary>Shots of one turn, 1 to <see cref="MostShotsATurn"/>.</summary>
    public required int ShotsATurn { get; init; }

    /// <summary>The places, in order.</summary>
    public required ValueList<LineupPlace> Places { get; init; }

    /// <summary>Which place throws, from 0; null when nobody is here who has not finished.</summary>
    public int? Current { get; init; }

    /// <summary>Shots of the present turn so far.</summary>
    public int ThrownOfTurn { get; init; }

    /// <summary>The place that throws; null when nobody does.</summary>
    public LineupPlace? Throws => Current is { } index ? Places[index] : null;

    /// <summary>The place that throws after that; null when there is no other.</summary>
    public LineupPlace? Next => Current is { } index && TurnRule.After(Places, index) is { } next && next != index ? Places[next] : null;
}
