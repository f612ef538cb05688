using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>Steps of one session, in order and without gaps.</summary>
/// <param name="Id">The session.</param>
/// <param name="SetupJson">Its setup as it is kept; null when the chain has the session.</param>
/// <param name="Drill">Its drill as it was used; null when the chain has the session.</param>
/// <param name="Steps">The steps.</param>
public sealed record DeliveredSession(string Id, string? SetupJson, DeliveredDrill? Drill, ValueList<DeliveredStep> Steps);
