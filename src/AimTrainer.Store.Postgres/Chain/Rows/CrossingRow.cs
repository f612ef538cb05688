namespace AimTrainer.Store.Postgres;

/// <summary>How a shot crossed one of its targets, as it stands now. In parts by month.</summary>
public sealed class CrossingRow
{
    /// <summary>When the session was set up.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Which shot of it.</summary>
    public required int Number { get; init; }

    /// <summary>Which target of the shot, from 0.</summary>
    public required int Position { get; init; }

    /// <summary>The run of its block, from 0.</summary>
    public required int Run { get; init; }

    /// <summary>The target.</summary>
    public required string Name { get; init; }

    /// <summary>Feet past the foul line.</summary>
    public required double DistanceFeet { get; init; }

    /// <summary>Its middle as it was shown, the bowler's board.</summary>
    public required double CentreBoard { get; init; }

    /// <summary>Its width as it was shown.</summary>
    public required double WidthBoards { get; init; }

    /// <summary>Where the ball crossed; null when unknown.</summary>
    public double? CrossingBoard { get; init; }

    /// <summary>Crossing less centre, positive inside; null when unknown.</summary>
    public double? MissBoards { get; init; }

    /// <summary>Whether the target was held; null when unknown.</summary>
    public bool? Held { get; init; }

    /// <summary>Points; null when unknown.</summary>
    public int? Points { get; init; }

    /// <summary>Whether the shot counts: false once it was voided.</summary>
    public required bool Counts { get; init; }
}
