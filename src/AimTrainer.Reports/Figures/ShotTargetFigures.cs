using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>What came of a shot at one of its targets.</summary>
/// <param name="Crossing">How well the crossing is known.</param>
/// <param name="CrossingBoard">Where it crossed; null when that is not known.</param>
/// <param name="Held">Whether the target was held; null when that is not known.</param>
/// <param name="GrossMiss">Whether the miss is a gross one; null when that cannot be said.</param>
/// <param name="Split">Where the miss came from.</param>
/// <param name="Sentence">The same as a coach would say it.</param>
public sealed record ShotTargetFigures(CrossingKind Crossing, Board? CrossingBoard, bool? Held, bool? GrossMiss, TargetSplit Split, string Sentence)
{
    /// <summary>Whether it was missed: a place without a width by half a board or more. An unknown crossing is no miss.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool Missed => Held is { } held ? !held : Split.MissBoards is { } miss && Math.Abs(miss) >= MissWords.WorthAWordBoards;
}
