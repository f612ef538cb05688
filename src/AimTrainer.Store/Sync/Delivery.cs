using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>What a center sends.</summary>
/// <param name="Messages">The center's <see cref="SyncFormat.Messages"/>.</param>
/// <param name="Events">The center's <see cref="SyncFormat.Events"/>.</param>
/// <param name="Sessions">Sessions with their next steps.</param>
public sealed record Delivery(int Messages, int Events, ValueList<DeliveredSession> Sessions);
