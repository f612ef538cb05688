using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>One bowler of a lane that several share.</summary>
/// <param name="SessionId">The bowler's session.</param>
/// <param name="Bowler">The name in the records; null on what bowlers and screens are shown.</param>
/// <param name="ScreenName">The name as screens may show it.</param>
/// <param name="Status">Whether here, away or done.</param>
/// <param name="Phase">What the session is doing.</param>
/// <param name="Shots">Shots of the session so far.</param>
/// <param name="IsNow">Whether it is this bowler's turn.</param>
/// <param name="IsNext">Whether this bowler throws next.</param>
public sealed record LaneTurn(
    string SessionId, string? Bowler, string ScreenName, TurnStatus Status, SessionPhase Phase, int Shots, bool IsNow, bool IsNext);
