using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>A center tells of all its groups, by which the chain knows what belongs to a program.</summary>
/// <param name="Messages">The center's <see cref="SyncFormat.Messages"/>.</param>
/// <param name="Events">The center's <see cref="SyncFormat.Events"/>.</param>
/// <param name="Programs">The programs that they follow.</param>
/// <param name="Groups">The groups.</param>
public sealed record GroupsRequest(int Messages, int Events, ValueList<DeliveredProgram> Programs, ValueList<DeliveredGroup> Groups);
