using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A shot that a program sent, and whom it says it is of.</summary>
/// <param name="Shot">What was observed.</param>
/// <param name="Bowler">Who threw, when the sender says so.</param>
/// <param name="Hand">With which hand, when the sender says so.</param>
public sealed record ReceivedShot(Shot Shot, string? Bowler, Hand? Hand);
