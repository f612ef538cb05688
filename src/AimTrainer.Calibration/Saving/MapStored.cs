namespace AimTrainer.Calibration;

/// <summary>What came of saving a map, or of going back to the one before.</summary>
/// <param name="File">The file that holds from now on; null when it failed.</param>
/// <param name="Problem">Why it failed and what to do, in words; empty when it did not. The map used before then still holds.</param>
public sealed record MapStored(string? File, string Problem)
{
    /// <summary>What else is to be known, in words: projectors that leave a gap between them, say. Empty when there is nothing.</summary>
    public Domain.ValueList<string> Remarks { get; init; } = [];
}
