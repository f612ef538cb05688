using AimTrainer.Domain;
using AimTrainer.Store;

namespace AimTrainer.Chain.Tests;

/// <summary>A line that counts what goes over it, and can change it.</summary>
internal sealed class CountingLink(IChainLink link) : IChainLink
{
    public int Steps { get; private set; }

    public int Erasures { get; private set; }

    public int GroupsTold { get; private set; }

    public Func<HaveAnswer, HaveAnswer> Change { get; init; } = answer => answer;

    public Func<DeliveredSession, DeliveredSession> Spoil { get; init; } = session => session;

    public string Name => link.Name;

    public async Task<HaveAnswer> HaveAsync(HaveRequest request, CancellationToken cancellationToken) => Change(await link.HaveAsync(request, cancellationToken));

    public Task<DeliveryAnswer> DeliverAsync(Delivery delivery, CancellationToken cancellationToken)
    {
        Steps += delivery.Sessions.Sum(session => session.Steps.Count);
        return link.DeliverAsync(delivery with { Sessions = delivery.Sessions.Select(Spoil).ToValueList() }, cancellationToken);
    }

    public Task<ErasureAnswer> EraseAsync(ErasureRequest request, CancellationToken cancellationToken)
    {
        Erasures++;
        return link.EraseAsync(request, cancellationToken);
    }

    public Task<GroupsAnswer?> TellGroupsAsync(GroupsRequest request, CancellationToken cancellationToken)
    {
        GroupsTold++;
        return link.TellGroupsAsync(request, cancellationToken);
    }
}
