using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>One entry in the history of a ball's surface. Nothing is ever taken out of it.</summary>
public sealed class BallSurfaceRow
{
    /// <summary>Given by the database.</summary>
    public long Id { get; init; }

    /// <summary>Which ball.</summary>
    public required long BallId { get; init; }

    /// <summary>When it was done or measured.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Work or scan.</summary>
    public required BallSurfaceKind Kind { get; init; }

    /// <summary>After work: grit or finish.</summary>
    public string? Finish { get; init; }

    /// <summary>Of a scan: the meter's number.</summary>
    public double? Roughness { get; init; }

    /// <summary>Of a scan: the meter's unit.</summary>
    public string? RoughnessUnit { get; init; }

    /// <summary>Games since the work before.</summary>
    public int? Games { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }
}
