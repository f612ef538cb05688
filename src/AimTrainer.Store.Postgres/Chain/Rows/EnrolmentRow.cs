namespace AimTrainer.Store.Postgres;

/// <summary>That a bowler is in a group. It goes with the bowler.</summary>
public sealed class EnrolmentRow
{
    /// <summary>Which center.</summary>
    public required int CenterId { get; init; }

    /// <summary>Which group.</summary>
    public required string GroupId { get; init; }

    /// <summary>When that began.</summary>
    public required DateOnly GroupStarts { get; init; }

    /// <summary>Who.</summary>
    public required long BowlerId { get; init; }

    /// <summary>The level of the program.</summary>
    public required string Level { get; init; }
}
