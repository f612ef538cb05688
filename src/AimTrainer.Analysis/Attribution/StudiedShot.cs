using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A shot in the light of all shots at its line.</summary>
/// <param name="Split">Where its misses came from.</param>
/// <param name="Gross">For each target whether the miss is a gross one; null when that cannot be said.</param>
public sealed record StudiedShot(ShotSplit Split, ValueList<bool?> Gross)
{
    /// <summary>Whether any of its misses is a gross one.</summary>
    public bool HasGross => Gross.AsSpan().Contains(true);
}
