using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>A bowler's accuracy over sessions, and the same apart by drill, block, ball, line, part of the lane, speed, and early and late.</summary>
/// <param name="Bowler">Whose.</param>
/// <param name="Hand">The hand; boards count from its edge.</param>
/// <param name="Simulated">Whether every shot is invented.</param>
/// <param name="From">First moment of the period; null for no limit.</param>
/// <param name="To">First moment after the period; null for no limit.</param>
/// <param name="Shots">Shots that count in the period.</param>
/// <param name="Newest">How many of them are in these figures: the newest.</param>
/// <param name="Accuracy">The figures, by place: all targets at the arrows together, others by the whole foot. A line as a whole only where shots are apart by line.</param>
public sealed record BowlerFigures(
    string Bowler, Hand Hand, bool Simulated, DateTimeOffset? From, DateTimeOffset? To, int Shots, int Newest, AccuracyReport Accuracy)
{
    /// <summary>At most so many shots, the newest.</summary>
    public const int MostShots = PracticeLimits.MostShots;

    /// <summary>The figures of a practice.</summary>
    /// <param name="practice">The practice.</param>
    /// <param name="crossings">Its newest crossings, newest shot first.</param>
    /// <param name="lane">The lane of the newest session, whose boards are as wide as inches are told.</param>
    /// <param name="filter">The period.</param>
    /// <param name="by">Groups of this kind only; null for all.</param>
    public static BowlerFigures Of(BowlerPractice practice, IReadOnlyList<PracticeCrossing> crossings, LaneProfile lane, PracticeFilter filter, Grouping? by = null)
    {
        var drills = practice.Sessions.AsEnumerable().ToDictionary(session => session.SessionId, session => session.DrillName, StringComparer.Ordinal);
        var blocks = practice.Blocks.AsEnumerable().GroupBy(block => (block.SessionId, block.Run)).ToDictionary(run => run.Key, run => run.First().BlockName);
        var runs = new Dictionary<(string, int), int>();
        foreach (var crossing in crossings)
        {
            runs[(crossing.SessionId, crossing.Number)] = crossing.Run;
        }

        var accumulator = new AccuracyAccumulator(new AccuracySettings { Lane = lane });
        var shots = ReportShot.Of(crossings);
        foreach (var shot in shots)
        {
            var session = shot.Session!;
            accumulator.Add(shot with
            {
                Targets = shot.Targets.Select(target => target with { Name = TestPlace.Of(target.Distance.Value).ToString() }).ToValueList(),
                Drill = drills.GetValueOrDefault(session),
                Block = blocks.GetValueOrDefault((session, runs[(session, shot.NumberInSession)])),
            });
        }

        // Shots at several lines have no line as a whole in common.
        var all = accumulator.Result();
        var groups = all.Groups.AsEnumerable().Where(group => by is null || group.By == by).Select(group => group.By == Grouping.Line ? group : group with { Line = null });
        var accuracy = all with
        {
            Line = null,
            Groups = groups.ToValueList(),
            GroupingsUnknown = all.GroupingsUnknown.AsEnumerable().Where(unknown => by is null || unknown.By == by).ToValueList(),
        };
        return new BowlerFigures(
            practice.Bowler, practice.Hand, practice.Simulated, filter.From, filter.To, practice.Sessions.AsEnumerable().Sum(session => session.Shots), shots.Count, accuracy);
    }
}
