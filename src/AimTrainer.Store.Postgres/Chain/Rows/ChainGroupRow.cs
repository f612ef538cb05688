namespace AimTrainer.Store.Postgres;

/// <summary>People of one center who follow a program together, as that center told of them last.</summary>
public sealed class ChainGroupRow
{
    /// <summary>Which center.</summary>
    public required int CenterId { get; init; }

    /// <summary>The group's id there.</summary>
    public required string Id { get; init; }

    /// <summary>The first day of the program's first week. Part of the key: an id may be used again when a group is over.</summary>
    public required DateOnly Starts { get; init; }

    /// <summary>The first day after its last week.</summary>
    public required DateOnly Ends { get; init; }

    /// <summary>Which program.</summary>
    public required string ProgramId { get; init; }

    /// <summary>The whole program as the center had it.</summary>
    public required string ProgramJson { get; init; }

    /// <summary>How many are in it; of those without a session here nothing else is kept.</summary>
    public required int Members { get; init; }
}
