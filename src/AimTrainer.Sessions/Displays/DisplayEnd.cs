namespace AimTrainer.Sessions;

/// <summary>The last event of a display's stream, when the host ends it for good.</summary>
/// <param name="Why">Why, for a person.</param>
public sealed record DisplayEnd(string Why);
