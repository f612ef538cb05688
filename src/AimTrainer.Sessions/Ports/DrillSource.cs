using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A drill and the very bytes it was read from.</summary>
/// <param name="Script">The drill.</param>
/// <param name="Hash">SHA-256 of the bytes, lower-case hex.</param>
/// <param name="Json">The bytes as text.</param>
public sealed record DrillSource(DrillScript Script, string Hash, string Json);
