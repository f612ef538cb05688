using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>The shots of a file as a fit needs them, and what became of the others.</summary>
/// <param name="Shots">Those that can be fitted, with their line in the file.</param>
/// <param name="LeftOut">Those that cannot, and why.</param>
/// <param name="Usual">How often the usual value was taken: speed, revs, axis rotation, axis tilt.</param>
internal sealed record FitLaneInput(
    IReadOnlyList<(FitShot Shot, int Line)> Shots, IReadOnlyList<(int Line, string Why)> LeftOut, IReadOnlyDictionary<string, int> Usual)
{
    /// <summary>The first reason, for when there is no shot at all.</summary>
    public string WhyNone => LeftOut.Count == 0 ? ": it holds none" : $"; line {LeftOut[0].Line}: {LeftOut[0].Why}";

    public static FitLaneInput Read(IEnumerable<FeedItem> items, AimBowler? usual, Hand? hand, Action<FileProblem> report)
    {
        var (shots, leftOut, taken) = (new List<(FitShot, int)>(), new List<(int, string)>(), new Dictionary<string, int>());
        var seen = new DuplicateShots();
        foreach (var item in items)
        {
            if (item is FeedItem.Unreadable unreadable)
            {
                report(unreadable.Problem);
                continue;
            }

            var read = (FeedItem.ShotRead)item;
            if (!seen.Add(read.Shot))
            {
                leftOut.Add((read.Line, "the same shot again"));
                continue;
            }

            var missing = new List<string>();
            var shot = One(read.Shot, read.Hand ?? hand ?? usual?.Hand ?? Hand.Right, usual, missing);
            var why = missing.Count > 0 && usual is null
                ? $"{string.Join(", ", missing)} not measured; give the bowler's usual throw with --usual"
                : shot.Problem() ?? (shots.Count == LaneFit.MostShots ? $"more than {LaneFit.MostShots} shots" : null);
            if (why is not null)
            {
                leftOut.Add((read.Line, why));
                continue;
            }

            shots.Add((shot, read.Line));
            foreach (var name in missing)
            {
                taken[name] = taken.GetValueOrDefault(name) + 1;
            }
        }

        return new FitLaneInput(shots, leftOut, taken);
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
            Boards(shot),
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

    private static ValueList<MeasuredBoard> Boards(Shot shot)
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
}
