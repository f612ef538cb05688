using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Observed shots as a fit needs them, and what became of the others.</summary>
/// <param name="Shots">Those that can be fitted, with their line in the file or their number in the session.</param>
/// <param name="LeftOut">Those that cannot, and why.</param>
/// <param name="Usual">How often the usual value was taken: speed, revs, axis rotation, axis tilt.</param>
public sealed record FitShots(
    ValueList<(FitShot Shot, int Line)> Shots, ValueList<(int Line, string Why)> LeftOut, ValueList<(string What, int Shots)> Usual)
{
    /// <summary>The first reason, for when there is no shot at all.</summary>
    public string WhyNone => LeftOut.Count == 0 ? ": it holds none" : $"; line {LeftOut[0].Line}: {LeftOut[0].Why}";

    /// <summary>Takes what a fit can take.</summary>
    /// <param name="shots">Shots, whose hand, and their line or number.</param>
    /// <param name="usual">The bowler's usual throw, for what was not measured; null when nobody gave it.</param>
    /// <param name="advice">How to give it, for messages: "give ... with ...".</param>
    public static FitShots Of(IEnumerable<(Shot Shot, Hand Hand, int Line)> shots, AimBowler? usual, string advice)
    {
        var (good, leftOut, taken) = (new List<(FitShot, int)>(), new List<(int, string)>(), new Dictionary<string, int>());
        foreach (var (observed, hand, line) in shots)
        {
            var missing = new List<string>();
            var shot = One(observed, hand, usual, missing);
            var why = missing.Count > 0 && usual is null
                ? $"{string.Join(", ", missing)} not measured; {advice}"
                : shot.Problem() ?? (good.Count == LaneFit.MostShots ? $"more than {LaneFit.MostShots} shots" : null);
            if (why is not null)
            {
                leftOut.Add((line, why));
                continue;
            }

            good.Add((shot, line));
            foreach (var name in missing)
            {
                taken[name] = taken.GetValueOrDefault(name) + 1;
            }
        }

        return new FitShots(good.ToValueList(), leftOut.ToValueList(), taken.Select(one => (one.Key, one.Value)).ToValueList());
    }

    /// <summary>Where the middle of a ball was seen on the boards, nearest first: crossings, laydown (0 ft), breakpoint, entry (60 ft).</summary>
    public static ValueList<MeasuredBoard> BoardsOf(Shot shot)
    {
        var boards = shot.Crossings.AsEnumerable().Select(crossing => new MeasuredBoard(crossing.Distance.Value, crossing.Board.Boards)).ToList();
        Add(0, shot.Laydown);
        Add(LaneProfile.HeadPin.Value, shot.Entry);
        if (shot.Breakpoint is { Distance: { } distance } breakpoint)
        {
            Add(distance.Value, breakpoint.Board);
        }

        // A ball in the gutter no longer runs on the lane that is fitted.
        return boards.Where(board => board.Board is >= 0.5 and <= 39.5).OrderBy(board => board.Feet).ToValueList();

        void Add(double feet, Board? board)
        {
            if (board is { } known && boards.TrueForAll(other => other.Feet != feet))
            {
                boards.Add(new MeasuredBoard(feet, known.Boards));
            }
        }
    }

    private static FitShot One(Shot shot, Hand hand, AimBowler? usual, List<string> missing)
    {
        double Known(double? measured, double? instead, string name)
        {
            if (measured is null)
            {
                missing.Add(name);
            }

            return measured ?? instead ?? 0;
        }

        // A speed of which nobody knows where it was measured says nothing.
        var speed = shot.Speed is { Place: not SpeedPlace.Unknown } known ? known : (BallSpeed?)null;
        return new FitShot(
            hand,
            BoardsOf(shot),
            Known(speed?.Value.Value, usual?.SpeedMph, "speed"),
            Known(shot.Revs?.Value, usual?.RevsRpm, "revs"),
            Known(shot.AxisRotation?.Value, usual?.AxisRotationDegrees, "axis rotation"))
        {
            AxisTiltDegrees = Known(shot.AxisTilt?.Value, usual?.AxisTiltDegrees, "axis tilt"),
            SpeedPlace = speed?.Place ?? SpeedPlace.Release,
            LaydownFeet = usual?.LaydownFeet ?? 0,
            SpeedSpreadMph = speed is null ? usual?.Scatter.Spreads[(int)ScatterPart.Speed] ?? 0 : 0,
            RevsSpreadRpm = shot.Revs is null ? usual?.Scatter.Spreads[(int)ScatterPart.Revs] ?? 0 : 0,
        };
    }
}
