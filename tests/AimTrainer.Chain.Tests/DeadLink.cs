using AimTrainer.Store;

namespace AimTrainer.Chain.Tests;

/// <summary>A line over which nothing goes.</summary>
internal sealed class DeadLink : IChainLink
{
    public string Name => "nowhere";

    public Task<HaveAnswer> HaveAsync(HaveRequest request, CancellationToken cancellationToken) => throw new ChainAwayException("away");

    public Task<DeliveryAnswer> DeliverAsync(Delivery delivery, CancellationToken cancellationToken) => throw new ChainAwayException("away");

    public Task<GroupsAnswer?> TellGroupsAsync(GroupsRequest request, CancellationToken cancellationToken) => throw new ChainAwayException("away");

    public Task<ErasureAnswer> EraseAsync(ErasureRequest request, CancellationToken cancellationToken) => throw new ChainAwayException("away");
}
