namespace AimTrainer.Domain;

/// <summary>A new session, or why it cannot be had.</summary>
/// <param name="State">The session, waiting; null when there are problems.</param>
/// <param name="Problems">What is missing or wrong, each with what to do.</param>
public sealed record SessionOpening(SessionState? State, ValueList<string> Problems);
