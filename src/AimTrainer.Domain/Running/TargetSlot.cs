namespace AimTrainer.Domain;

/// <summary>What may change about one target of a block while it is thrown at.</summary>
/// <param name="Sizing">What its sizing rule knows.</param>
/// <param name="Shift">How far the coach moved it across the lane.</param>
/// <param name="Distance">Where it lies along the lane.</param>
internal sealed record TargetSlot(SizingState Sizing, BoardOffset Shift, Feet Distance);
