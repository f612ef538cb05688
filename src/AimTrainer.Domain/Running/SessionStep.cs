namespace AimTrainer.Domain;

/// <summary>What came of one input.</summary>
/// <param name="State">The session now; the same as before when the input was refused or changed nothing.</param>
/// <param name="Events">What happened, in order; empty when nothing did.</param>
/// <param name="Refusal">Why the input cannot be followed and what to do; null when it was.</param>
public sealed record SessionStep(SessionState State, ValueList<SessionEvent> Events, string? Refusal);
