namespace AimTrainer.Store.Postgres;

/// <summary>What the shots of one run add up to at one target: what reports are made from, so that they read no shot.</summary>
public sealed class SumRow
{
    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Which run.</summary>
    public required int Run { get; init; }

    /// <summary>Which target.</summary>
    public required string Name { get; init; }

    /// <summary>Feet past the foul line.</summary>
    public required double DistanceFeet { get; init; }

    /// <summary>What the block is for; null when its beginning is not known.</summary>
    public string? Kind { get; init; }

    /// <summary>Shots that count.</summary>
    public required int Shots { get; init; }

    /// <summary>Those whose crossing is known.</summary>
    public required int Graded { get; init; }

    /// <summary>Those that held the target.</summary>
    public required int Held { get; init; }

    /// <summary>Sum of the misses, boards.</summary>
    public required double SumOfMisses { get; init; }

    /// <summary>Sum of their sizes.</summary>
    public required double SumOfSizes { get; init; }

    /// <summary>Sum of their squares.</summary>
    public required double SumOfSquares { get; init; }
}
