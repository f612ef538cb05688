using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>A center asks how far its sessions have come at the chain.</summary>
/// <param name="Messages">The center's <see cref="SyncFormat.Messages"/>.</param>
/// <param name="Events">The center's <see cref="SyncFormat.Events"/>.</param>
/// <param name="Sessions">Ids, at most <see cref="SyncFormat.MostAsked"/>.</param>
public sealed record HaveRequest(int Messages, int Events, ValueList<string> Sessions);
