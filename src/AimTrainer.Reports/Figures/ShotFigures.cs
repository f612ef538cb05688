using System.Text.Json.Serialization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>Where the misses of one shot came from.</summary>
/// <param name="Number">Its number in the session, or in a file.</param>
/// <param name="Held">Whether every target was held; null when that is not known.</param>
/// <param name="StraightLine">How the ball left; null when that is not known.</param>
/// <param name="LaydownOffBoards">Laydown less the plan's, positive inside.</param>
/// <param name="AngleOffDegrees">Launch angle less the plan's, positive outward.</param>
/// <param name="Targets">At each target, nearest first.</param>
/// <param name="Why">Why it could not be split; null when it could.</param>
public sealed record ShotFigures(
    [property: JsonPropertyOrder(-2)] int Number,
    bool? Held,
    StraightLine? StraightLine,
    double? LaydownOffBoards,
    double? AngleOffDegrees,
    ValueList<ShotTargetFigures> Targets,
    string? Why)
{
    /// <summary>Its line in a file; left out for a stored shot.</summary>
    [JsonPropertyOrder(-1)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Line { get; init; }

    /// <summary>The figures of a shot that was split.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="shot">The shot.</param>
    /// <param name="studied">How it was split.</param>
    /// <param name="words">Says it.</param>
    /// <param name="kind">What its parts are held against.</param>
    public static ShotFigures Of(int number, ObservedShot shot, StudiedShot studied, MissWords words, PlanKind kind) => new(
        number,
        shot.Held,
        studied.Split.Line,
        studied.Split.LaydownOffBoards,
        studied.Split.AngleOffDegrees,
        shot.Targets.Select((target, i) => new ShotTargetFigures(
            target.Kind, target.Board, target.Held, studied.Gross[i], studied.Split.Targets[i], words.Of(studied.Split, i, kind))).ToValueList(),
        studied.Split.Why);
}
