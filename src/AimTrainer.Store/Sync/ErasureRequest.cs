using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>A center says which sessions were erased there for good.</summary>
/// <param name="Messages">The center's <see cref="SyncFormat.Messages"/>.</param>
/// <param name="Events">The center's <see cref="SyncFormat.Events"/>.</param>
/// <param name="Sessions">The sessions.</param>
public sealed record ErasureRequest(int Messages, int Events, ValueList<string> Sessions);
