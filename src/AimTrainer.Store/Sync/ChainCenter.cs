namespace AimTrainer.Store;

/// <summary>A center of the chain.</summary>
/// <param name="Id">Given by the chain.</param>
/// <param name="Name">What people call it.</param>
public sealed record ChainCenter(int Id, string Name);
