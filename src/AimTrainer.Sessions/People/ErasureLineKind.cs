namespace AimTrainer.Sessions;

/// <summary>What a line of <c>erasures.jsonl</c> says.</summary>
internal enum ErasureLineKind
{
    /// <summary>Sessions go: written before their rows do, so that a kill in between leaves the wish.</summary>
    Erased,

    /// <summary>Their rows and bytes are gone from the record here.</summary>
    Finished,

    /// <summary>The chain confirmed that it erased them too.</summary>
    ChainTold,
}
