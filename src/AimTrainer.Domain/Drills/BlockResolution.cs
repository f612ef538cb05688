namespace AimTrainer.Domain;

/// <summary>Where everything in a block is, or everything that cannot be told.</summary>
/// <param name="Aims">The block's aims in the drill's order; a walk's one aim at its start.</param>
/// <param name="WalkPlaces">A walk's aim at each of its places, the first and the last included; empty when the block does not walk.</param>
/// <param name="Problems">What is missing and what to do, one text a problem; when there are any, the block cannot start and the lists are empty.</param>
public sealed record BlockResolution(ValueList<ResolvedAim> Aims, ValueList<ResolvedAim> WalkPlaces, ValueList<string> Problems);
