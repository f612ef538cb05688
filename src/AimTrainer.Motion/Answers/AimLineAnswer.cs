namespace AimTrainer.Motion;

/// <summary>One line of an aim map, for machines.</summary>
/// <param name="LaydownBoard">Its laydown.</param>
/// <param name="LaunchAngleDeg">Its angle, positive outward.</param>
/// <param name="Chance">Share of throws that reach the window.</param>
/// <param name="Error">Its standard error from counting.</param>
public sealed record AimLineAnswer(decimal? LaydownBoard, decimal? LaunchAngleDeg, decimal? Chance, decimal? Error);
