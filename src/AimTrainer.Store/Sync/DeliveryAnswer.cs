using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>What became of a delivery. What is named here as there survives a power cut at the chain.</summary>
/// <param name="Sessions">One for each session that was sent.</param>
public sealed record DeliveryAnswer(ValueList<DeliveredAnswer> Sessions);
