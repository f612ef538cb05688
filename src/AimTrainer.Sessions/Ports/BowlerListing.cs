using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>One line of the list of bowlers.</summary>
/// <param name="Name">As it was first written.</param>
/// <param name="Hand">The hand of the newest session.</param>
/// <param name="Sessions">How many sessions, simulated ones included.</param>
/// <param name="Shots">Shots that count in them.</param>
/// <param name="LastAt">When the newest session was set up.</param>
/// <param name="OnlySimulated">Whether every session is a simulated one.</param>
/// <param name="Balls">The balls that were named, by name.</param>
public sealed record BowlerListing(
    string Name, Hand Hand, int Sessions, int Shots, DateTimeOffset LastAt, bool OnlySimulated, ValueList<string> Balls);
