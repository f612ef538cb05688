using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>Where the balls of a session were seen.</summary>
/// <param name="Bowler">Who threw.</param>
/// <param name="Hand">The hand: the edge from which boards count.</param>
/// <param name="Simulated">Whether the shots are simulated.</param>
/// <param name="Shots">Shots that were seen anywhere on the boards, in their order.</param>
public sealed record SessionCrossings(string Bowler, Hand Hand, bool Simulated, ValueList<ShotCrossings> Shots);
