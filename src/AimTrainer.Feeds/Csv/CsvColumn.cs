namespace AimTrainer.Feeds;

/// <summary>One column of a file, worked out from its heading once.</summary>
/// <param name="Heading">As the file writes it.</param>
/// <param name="Name">Our heading for it.</param>
/// <param name="Field">How <see cref="AimTrainer.Domain.ShotReading"/> names it: as <paramref name="Name"/>, but the arrows by their distance.</param>
/// <param name="Is">What it holds.</param>
/// <param name="Feet">The distance of a <see cref="ShotColumn.BoardAt"/>.</param>
/// <param name="Factor">What to multiply its numbers by; for a length across the lane, to get inches.</param>
/// <param name="IsLength">Whether it is a place given as a length from an edge, not in boards.</param>
/// <param name="From">The edge that a place counts from.</param>
/// <param name="Converted">Whether its numbers are not as in our own files.</param>
internal sealed record CsvColumn(
    string Heading, string Name, string Field, ShotColumn Is, double Feet, double Factor, bool IsLength, LaneEdge From, bool Converted);
