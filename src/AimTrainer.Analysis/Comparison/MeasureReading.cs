using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A measure and how it is read off a shot.</summary>
/// <param name="Measure">What is compared.</param>
/// <param name="Gross">
/// Less is no misreading, however alike the other throws are; null where standing out is no sign of one. Where a ball turns, and how sharply,
/// hangs on where its path runs along the lane: a real throw may lie many feet from the others. To leave such throws out would cut off
/// one side of what the ball really does, and the mean would be wrong.
/// </param>
/// <param name="Of">Null where it was not measured.</param>
internal sealed record MeasureReading(ComparedMeasure Measure, double? Gross, Func<Shot, double?> Of)
{
    private const double GrossBoards = 2;
    private const double GrossDegrees = 1;
    private const double GrossMph = 1;


    /// <summary>What is judged, whether or not it was measured.</summary>
    public static IReadOnlyList<MeasureReading> Judged(LaneProfile lane) =>
    [
        new(new("entryBoard", MeasureUnit.Boards, LaneProfile.HeadPin, true), GrossBoards, shot => (shot.Entry ?? At(shot, LaneProfile.HeadPin))?.Boards),
        new(new("breakpointBoard", MeasureUnit.Boards, null, true), GrossBoards, shot => shot.Breakpoint?.Board.Boards),
        new(new("breakpointFeet", MeasureUnit.Feet, null, true), null, shot => shot.Breakpoint?.Distance?.Value),
        new(new("entryAngle", MeasureUnit.Degrees, null, true), GrossDegrees, shot => shot.EntryAngle?.Value),
        new(new("sharpness", MeasureUnit.DegreesPerFoot, null, true), null, shot => Sharpness.Of(shot, lane)),
        new(
            new("speedAtPins", MeasureUnit.MilesPerHour, null, true),
            GrossMph,
            shot => shot.Speed is { Place: SpeedPlace.Pins } speed ? speed.Value.Value : null),
    ];

    /// <summary>The places on the way that at least half of the throws have, nearest first; 60 ft is the entry board.</summary>
    public static IEnumerable<MeasureReading> OnTheWay(IReadOnlyCollection<Shot> shots) => shots
        .SelectMany(shot => shot.Crossings.AsEnumerable().Select(crossing => crossing.Distance))
        .GroupBy(distance => distance)
        .Where(same => same.Count() * 2 >= shots.Count && same.Key != LaneProfile.HeadPin)
        .Select(same => same.Key)
        .Order()
        .Select(distance => new MeasureReading(
            new(string.Create(CultureInfo.InvariantCulture, $"boardAt{distance.Value}"), MeasureUnit.Boards, distance, false), GrossBoards, shot => At(shot, distance)?.Boards));

    /// <summary>Whether a misreading of another measure makes this one worthless too: it was read off the same places.</summary>
    public bool RestsOn(string other) => Measure.Name switch
    {
        "breakpointFeet" => other == "breakpointBoard",
        "sharpness" => other is "breakpointBoard" or "entryBoard" || other.StartsWith("boardAt", StringComparison.Ordinal),
        _ => false,
    };

    private static Board? At(Shot shot, Feet distance)
    {
        foreach (var crossing in shot.Crossings)
        {
            if (crossing.Distance == distance)
            {
                return crossing.Board;
            }
        }

        return null;
    }
}
