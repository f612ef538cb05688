namespace AimTrainer.Domain;

/// <summary>A drill: what is practised, in which order, with which targets. Read from JSON; see <c>docs/drills.md</c>.</summary>
public sealed record DrillScript
{
    /// <summary>Name for commands and records: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>Name for people.</summary>
    public required string Name { get; init; }

    /// <summary>The one thing that it trains or tests.</summary>
    public required string Purpose { get; init; }

    /// <summary>Who it is for.</summary>
    public required string WhoFor { get; init; }

    /// <summary>How long it takes, in minutes, about.</summary>
    public required int AboutMinutes { get; init; }

    /// <summary>What to take care of, shown before the session.</summary>
    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>Whether the bowler is asked how the arm feels before the first shot. The answer is noted; nothing is prescribed.</summary>
    public bool AsksHowArmFeels { get; init; }

    /// <summary>Its parts, in order.</summary>
    public required ValueList<DrillBlock> Blocks { get; init; }
}
