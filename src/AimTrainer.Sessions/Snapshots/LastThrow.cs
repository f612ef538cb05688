namespace AimTrainer.Sessions;

/// <summary>The newest shot of a shared lane: by the time it is seen the turn is mostly with somebody else.</summary>
/// <param name="SessionId">Whose session.</param>
/// <param name="Bowler">Who threw; null on what bowlers and screens are shown.</param>
/// <param name="ScreenName">The name as screens may show it.</param>
/// <param name="Number">The shot's number in that session.</param>
/// <param name="Held">Whether it held its target; null when that is not known.</param>
public sealed record LastThrow(string SessionId, string? Bowler, string ScreenName, int Number, bool? Held);
