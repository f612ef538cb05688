using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A launch angle and whether somebody reported it.</summary>
/// <param name="Angle">Degrees, positive outward.</param>
/// <param name="Computed">True when worked out from laydown and a crossing, false when reported.</param>
public readonly record struct LaunchAngle([property: JsonPropertyName("degrees")] Degrees Angle, bool Computed);
