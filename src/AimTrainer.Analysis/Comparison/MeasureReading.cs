using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A measure and how it is read off a shot; null where it was not measured.</summary>
internal sealed record MeasureReading(ComparedMeasure Measure, Func<Shot, double?> Of)
{
    /// <summary>What is judged, whether or not it was measured.</summary>
    public static IReadOnlyList<MeasureReading> Judged(LaneProfile lane) =>
    [
        new(new("entryBoard", MeasureUnit.Boards, LaneProfile.HeadPin, true), shot => (shot.Entry ?? At(shot, LaneProfile.HeadPin))?.Boards),
        new(new("breakpointBoard", MeasureUnit.Boards, null, true), shot => shot.Breakpoint?.Board.Boards),
        new(new("breakpointFeet", MeasureUnit.Feet, null, true), shot => shot.Breakpoint?.Distance?.Value),
        new(new("entryAngle", MeasureUnit.Degrees, null, true), shot => shot.EntryAngle?.Value),
        new(new("sharpness", MeasureUnit.DegreesPerFoot, null, true), shot => Sharpness.Of(shot, lane)),
        new(new("speedAtPins", MeasureUnit.MilesPerHour, null, true), shot => shot.Speed is { Place: SpeedPlace.Pins } speed ? speed.Value.Value : null),
    ];

    /// <summary>The places on the way that at least half of the throws have, nearest first; 60 ft is the entry board.</summary>
    public static IEnumerable<MeasureReading> OnTheWay(IReadOnlyCollection<Shot> shots) => shots
        .SelectMany(shot => shot.Crossings.AsEnumerable().Select(crossing => crossing.Distance))
        .GroupBy(distance => distance)
        .Where(same => same.Count() * 2 >= shots.Count && same.Key != LaneProfile.HeadPin)
        .Select(same => same.Key)
        .Order()
        .Select(distance => new MeasureReading(
            new(string.Create(CultureInfo.InvariantCulture, $"boardAt{distance.Value}"), MeasureUnit.Boards, distance, false), shot => At(shot, distance)?.Boards));

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
