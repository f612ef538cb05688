using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>How another program's file is to be read: its headings, units, decimal sign and count of boards.</summary>
public sealed record CsvMapping
{
    /// <summary>Our own headings and units.</summary>
    public static CsvMapping Ours { get; } = new();

    /// <summary>What its headings mean; a heading that is not here is taken as one of ours.</summary>
    public ValueList<MappedColumn> Columns { get; init; } = [];

    /// <summary>What stands between cells.</summary>
    public char Delimiter { get; init; } = ',';

    /// <summary>Whether numbers are written 10,5.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>The edge from which boards count, an integer being the middle of a board.</summary>
    public LaneEdge BoardsCountFrom { get; init; }

    /// <summary>The edge from which lengths across the lane (cm, m, in, mm, ft) are measured.</summary>
    public LaneEdge PositionsFrom { get; init; }

    /// <summary>The time's format (<c>dd.MM.yyyy HH:mm:ss</c>), or null for ISO 8601.</summary>
    public string? TimeFormat { get; init; }
}
