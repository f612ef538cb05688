namespace AimTrainer.Display;

/// <summary>Rectangles that are drawn by one call.</summary>
/// <param name="IsOpaque">Whether they replace what lies below: then their colours are sRGB and go to the picture as they are.</param>
/// <param name="First">The first rectangle.</param>
/// <param name="Count">How many there are.</param>
internal readonly record struct MeshBatch(bool IsOpaque, int First, int Count);
