namespace AimTrainer.Store;

/// <summary>A ball of one bowler. Made when it is first named in a session or a shot, or described; what is not known is null.</summary>
public sealed class BallRow
{
    /// <summary>Given by the database.</summary>
    public long Id { get; init; }

    /// <summary>Whose it is.</summary>
    public required long BowlerId { get; init; }

    /// <summary>The name as it was first written.</summary>
    public required string Name { get; init; }

    /// <summary>The name as <see cref="Domain.NameKey"/> makes it; one of a kind for its bowler.</summary>
    public required string Key { get; init; }

    /// <summary>Grit or finish as it is now.</summary>
    public string? Surface { get; set; }

    /// <summary>Pounds.</summary>
    public double? WeightPounds { get; set; }

    /// <summary>Radius of gyration, inches.</summary>
    public double? GyrationInches { get; set; }

    /// <summary>Difference of the radii of gyration, inches.</summary>
    public double? DifferentialInches { get; set; }

    /// <summary>How it is drilled.</summary>
    public string? Layout { get; set; }

    /// <summary>Games since the last work on its surface.</summary>
    public int? GamesSinceSurfaceWork { get; set; }
}
