namespace AimTrainer.Sessions;

/// <summary>An entry for the history of a ball's surface, as it was sent.</summary>
/// <param name="Bowler">Whose ball.</param>
/// <param name="Ball">Its name.</param>
/// <param name="Surface">The entry.</param>
public sealed record ReceivedSurface(string Bowler, string Ball, BallSurface Surface);
