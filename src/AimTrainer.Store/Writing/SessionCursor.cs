using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>
/// What the writer remembers of a session between two steps, so that it need not read before it writes. Thrown away whenever a
/// transaction fails, and read again.
/// </summary>
internal sealed class SessionCursor
{
    public required long Key { get; init; }

    public required long BowlerId { get; init; }

    public required long? BallId { get; init; }

    public required bool Simulated { get; init; }

    /// <summary>The last step that was kept; 0 before the first.</summary>
    public required long Sequence { get; set; }

    /// <summary>The run of the block being thrown.</summary>
    public required int? Run { get; set; }

    /// <summary>The block being thrown.</summary>
    public required (string Name, BlockKind Kind)? Block { get; set; }

    /// <summary>Balls that shots named, by name as written.</summary>
    public Dictionary<string, long> Balls { get; } = [];
}
