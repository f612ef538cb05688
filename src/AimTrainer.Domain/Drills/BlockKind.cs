namespace AimTrainer.Domain;

/// <summary>What a block is for.</summary>
public enum BlockKind
{
    /// <summary>Measures: fixed targets, no adapting, feedback off unless the drill says otherwise.</summary>
    Test,

    /// <summary>Trains: targets may adapt.</summary>
    Training,

    /// <summary>Compares balls: fixed targets, whose throws are dealt out by <see cref="Order.Compare"/>.</summary>
    Comparison,
}
