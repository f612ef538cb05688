namespace AimTrainer.Store;

/// <summary>What a chain does for its centers. What it answered survives a power cut at the chain.</summary>
public interface IChainInbox
{
    /// <summary>The center of a token, or null when there is none, or it was revoked.</summary>
    Task<ChainCenter?> FindCenterAsync(string token, CancellationToken cancellationToken);

    /// <summary>Tells how far sessions have come, and what the center is to erase.</summary>
    Task<HaveAnswer> HaveAsync(ChainCenter center, HaveRequest request, CancellationToken cancellationToken);

    /// <summary>Takes steps: those that come next are kept, those that are there are compared, and nothing is ever overwritten.</summary>
    Task<DeliveryAnswer> TakeAsync(ChainCenter center, Delivery delivery, CancellationToken cancellationToken);

    /// <summary>Erases sessions, and takes nothing of them from then on.</summary>
    Task<ErasureAnswer> EraseAsync(ChainCenter center, ErasureRequest request, CancellationToken cancellationToken);

    /// <summary>Takes a center's groups in the place of those that it told of before.</summary>
    Task<GroupsAnswer> TakeGroupsAsync(ChainCenter center, GroupsRequest request, CancellationToken cancellationToken);
}
