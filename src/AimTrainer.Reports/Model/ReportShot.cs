using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Makes shots of what the record keeps of them.</summary>
internal static class ReportShot
{
    /// <summary>The shots, oldest first, each with its targets, nearest first.</summary>
    /// <param name="crossings">Newest shot first.</param>
    public static List<ObservedShot> Of(IReadOnlyList<PracticeCrossing> crossings) =>
        [.. crossings.Reverse().GroupBy(crossing => (crossing.SessionId, crossing.Number)).Select(shot => Shot([.. shot.OrderBy(target => target.DistanceFeet)]))];

    /// <summary>How a target was crossed.</summary>
    public static ObservedTarget TargetOf(PracticeCrossing crossing) => new(
        crossing.Target,
        Board.FromBoards(crossing.CentreBoard),
        Feet.FromFeet(crossing.DistanceFeet),
        crossing.Crossing,
        crossing.CrossingBoard is { } board ? Board.FromBoards(board) : null,
        crossing.MissBoards is { } miss ? BoardOffset.FromBoards(miss) : null,
        crossing.Held);

    private static ObservedShot Shot(List<PracticeCrossing> targets)
    {
        var first = targets[0];
        var reading = new ShotReading
        {
            LaydownBoard = first.LaydownBoard,
            LaunchAngleDegrees = first.LaunchAngleDegrees,
            SpeedMilesPerHour = first.SpeedMph,
            SpeedPlace = first.SpeedAt ?? SpeedPlace.Unknown,
            RevsRpm = first.RevsRpm,
        };
        var places = new HashSet<double>();
        foreach (var target in targets)
        {
            // A crossing that was worked out is no reading: the miss beyond it cannot be told from angle.
            if (target is { Crossing: CrossingKind.Measured, CrossingBoard: { } board } && places.Add(target.DistanceFeet))
            {
                reading.AddCrossing(target.DistanceFeet, board);
            }
        }

        // What is stored was checked when it came in; should it ever not pass, the shot is one of which nothing is known.
        var shot = reading.Check(out _) ?? new ShotReading().Check(out _)!;
        return new ObservedShot(shot, targets.Select(TargetOf).ToValueList())
        {
            Session = first.SessionId,
            Ball = first.Ball,
            NumberInSession = first.Number,
        };
    }
}
