using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>What is needed to read a shot file beside the file.</summary>
public sealed record CsvSettings
{
    /// <summary>The lane on which the shots were thrown: the distance of its arrows, its width.</summary>
    public required LaneProfile Lane { get; init; }

    /// <summary>The bowler's hand in rows that do not say it; needed only when the file counts from the left or right edge.</summary>
    public Hand? Hand { get; init; }

    /// <summary>How the file is to be read.</summary>
    public CsvMapping Mapping { get; init; } = CsvMapping.Ours;
}
