namespace AimTrainer.Store;

/// <summary>A center's line to the chain.</summary>
public interface IChainLink
{
    /// <summary>What people call the other end.</summary>
    string Name { get; }

    /// <summary>Asks how far sessions have come there.</summary>
    /// <exception cref="ChainAwayException">It cannot be reached, or is not well.</exception>
    /// <exception cref="ChainRefusedException">It takes nothing from this center.</exception>
    Task<HaveAnswer> HaveAsync(HaveRequest request, CancellationToken cancellationToken);

    /// <summary>Sends steps.</summary>
    /// <exception cref="ChainAwayException">It cannot be reached, or is not well; whether it took the steps is not known.</exception>
    /// <exception cref="ChainRefusedException">It takes nothing from this center.</exception>
    Task<DeliveryAnswer> DeliverAsync(Delivery delivery, CancellationToken cancellationToken);

    /// <summary>Has sessions erased.</summary>
    /// <exception cref="ChainAwayException">It cannot be reached, or is not well; whether it erased them is not known.</exception>
    /// <exception cref="ChainRefusedException">It takes nothing from this center.</exception>
    Task<ErasureAnswer> EraseAsync(ErasureRequest request, CancellationToken cancellationToken);

    /// <summary>Tells of the center's groups.</summary>
    /// <returns>Null when the chain is of a version that asks for none.</returns>
    /// <exception cref="ChainAwayException">It cannot be reached, or is not well; whether it took them is not known.</exception>
    /// <exception cref="ChainRefusedException">It takes nothing from this center.</exception>
    Task<GroupsAnswer?> TellGroupsAsync(GroupsRequest request, CancellationToken cancellationToken);
}
