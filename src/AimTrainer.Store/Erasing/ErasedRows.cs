using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>What was taken out of the record's tables.</summary>
/// <param name="Any">Whether anything was.</param>
/// <param name="Sessions">The ids of the sessions that are gone.</param>
/// <param name="Refusal">Why nothing was erased, and what to do; null unless it was refused.</param>
public sealed record ErasedRows(bool Any, ValueList<string> Sessions, string? Refusal = null)
{
    /// <summary>Nothing was there.</summary>
    public static ErasedRows None { get; } = new(false, []);
}
