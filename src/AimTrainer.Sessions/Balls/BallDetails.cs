using System.Text.Json.Serialization;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What a bowler says of a ball; what is null is not known.</summary>
public sealed record BallDetails
{
    /// <summary>Lightest and heaviest, in pounds.</summary>
    /// <remarks>Source: reference/trade.md, governing-body ball specifications: at most 16 lb; children's balls begin at 6 (common practice).</remarks>
    public const double LightestPounds = 6, HeaviestPounds = 16;

    /// <summary>Least and most radius of gyration, in inches.</summary>
    /// <remarks>Specifications allow 2.46 to 2.80 in from 13 lb up; lighter and older balls lie beyond.</remarks>
    public const double LeastGyrationInches = 2.2, MostGyrationInches = 2.9;

    /// <summary>Largest differential of the radii of gyration, in inches.</summary>
    /// <remarks>Specifications allow 0.060 in, and allowed 0.080 in once.</remarks>
    public const double MostDifferentialInches = 0.1;

    /// <summary>Most games since work on the surface.</summary>
    public const int MostGames = 100_000;

    /// <summary>Whose it is.</summary>
    public required string Bowler { get; init; }

    /// <summary>The name that the bowler gave it.</summary>
    public required string Name { get; init; }

    /// <summary>Grit or finish of the surface as it is now, in the bowler's words.</summary>
    public string? Surface { get; init; }

    /// <summary>Weight.</summary>
    public double? WeightPounds { get; init; }

    /// <summary>Radius of gyration.</summary>
    [JsonPropertyName("radiusOfGyrationInches")]
    public Inches? RadiusOfGyration { get; init; }

    /// <summary>Difference of the radii of gyration.</summary>
    [JsonPropertyName("differentialInches")]
    public Inches? Differential { get; init; }

    /// <summary>How it is drilled, in the bowler's words.</summary>
    public string? Layout { get; init; }

    /// <summary>Games since the last work on its surface.</summary>
    public int? GamesSinceSurfaceWork { get; init; }
}
