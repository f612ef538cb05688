using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>Makes a report of what the record gave. Pure: the same practice makes the same report.</summary>
public static class ReportBuilder
{
    private const int MostLinesStudied = 3;

    /// <summary>Makes a report.</summary>
    /// <param name="practice">Sessions and sums of the period.</param>
    /// <param name="crossings">The newest crossings of the same period, newest shot first.</param>
    /// <param name="lanes">The lanes of the sessions.</param>
    /// <param name="filter">The period.</param>
    /// <param name="made">When the report is made.</param>
    public static BowlerReport Build(
        BowlerPractice practice, IReadOnlyList<PracticeCrossing> crossings, ReportLanes lanes, PracticeFilter filter, DateTimeOffset made)
    {
        var lane = lanes.Newest;
        var record = TestRecord.Of(practice.Blocks);
        var shots = ReportShot.Of(crossings);
        var work = WorkOf(practice, record);
        var picture = new LanePicture(shots.Count, work.Shots, LaneTargets.Of(crossings, lane), MarksOf(lane, practice.Hand));
        var causes = CausesOf(shots, lanes);
        var trend = TrendOf(record);
        var tens = TenShotsOf(crossings, lane);
        var words = new SentenceRules(practice.Hand);
        return new BowlerReport(
            practice.Bowler,
            practice.Hand,
            practice.Simulated,
            made,
            filter.From,
            filter.To,
            practice.Sessions.Count == 0 ? lane.Name : practice.Sessions[^1].LaneName,
            work,
            picture,
            causes,
            trend,
            tens,
            [words.Lean(picture.Main), SentenceRules.Cause(causes), SentenceRules.Trend(trend)],
            words.WorkOn(picture.Main, causes, trend),
            ReportNotes.Of(practice, picture, causes, trend, filter).ToValueList(),
            ReportNotes.Missing(work, picture, causes, trend, tens).ToValueList());
    }

    private static ValueList<LaneMark> MarksOf(LaneProfile lane, Hand hand) => lane.Markers.AsEnumerable()
        .Select(mark => new LaneMark(JsonNamingPolicy.CamelCase.ConvertName(mark.Kind.ToString()), mark.Distance.Value, LaneProfile.BoardFor(mark, hand).Boards))
        .ToValueList();

    private static ReportWork WorkOf(BowlerPractice practice, TestRecord record)
    {
        var sessions = practice.Sessions;
        var drills = sessions.AsEnumerable().GroupBy(session => session.DrillId)
            .Select(drill => new DrillWork(drill.Key, drill.Last().DrillName, drill.Count(), drill.Sum(session => session.Shots)))
            .OrderByDescending(drill => drill.Shots).ThenBy(drill => drill.Id, StringComparer.Ordinal).ToList();
        return new ReportWork(
            sessions.Count,
            record.Visits.Count,
            sessions.AsEnumerable().Sum(session => session.Shots),
            sessions.Count == 0 ? null : sessions[0].StartedAt,
            sessions.Count == 0 ? null : sessions[^1].StartedAt,
            drills.Take(ReportWork.MostDrills).ToValueList(),
            Math.Max(0, drills.Count - ReportWork.MostDrills));
    }

    private static ReportCauses CausesOf(List<ObservedShot> shots, ReportLanes lanes)
    {
        if (shots.Count == 0)
        {
            return new ReportCauses(null, 0, 0, null, "no shot");
        }

        // Shots at one line on two lanes that run straight for different stretches are two sets: each is split by its own lane.
        var studies = shots.GroupBy(shot => (shot.Line, Lane: ReportLanes.Sort(lanes.Of(shot.Session))))
            .OrderByDescending(line => line.Count()).Take(MostLinesStudied).Select(line => StudyOf([.. line], lanes.Of(line.First().Session))).ToList();
        var study = studies.Where(found => SetOf(found).Targets.AsEnumerable().Any(target => target.Shares is not null)).MaxBy(found => found.Set!.Split)
            ?? studies.MaxBy(found => found.Set!.Split)!;
        var set = SetOf(study);
        var target = set.Split == 0 ? null : set.Targets.AsEnumerable().LastOrDefault(one => one.Shares is not null) ?? set.Targets[^1];
        var why = target?.Shares is not null ? null
            : set.Split == 0 ? WhyNoneSplit(set)
            : set.Plan is null ? set.PlanWhy
            : target!.SharesWhy;
        return new ReportCauses(set.Line, study.Set!.Shots, set.Split, target, why) { GrossSetAside = study.Set.Shots - set.Shots };
    }

    private static string WhyNoneSplit(SplitSet set) => set.NotSplit.Count == 0 ? "no shot was measured" : $"{set.NotSplit.AsEnumerable().MaxBy(lacking => lacking.Shots)!.Why}; "
        + "the laydown board, or a crossing 5 ft or more from the first, would tell";

    private static SplitSet SetOf(LineStudy study) =>
        study is { WithoutGross: { } kept, Set: { } all } && GrossShare.MayBeSetAside(all.Shots - kept.Shots, all.Shots) ? kept : study.Set!;

    private static LineStudy StudyOf(List<ObservedShot> shots, LaneProfile lane)
    {
        var study = new LineStudy(new AccuracySettings { Lane = lane });
        shots.ForEach(study.Add);
        study.Close();
        study.SetAsideGross(shots);
        return study;
    }

    private static ReportTrend TrendOf(TestRecord record)
    {
        if (record.Series.Count == 0)
        {
            return new ReportTrend(null, [], 0, [], null, $"no test block; a test of {TestSeries.FewestShots} measured shots makes a point");
        }

        var series = record.Series[0];
        var others = record.Series.AsEnumerable().Skip(1).Select(other => other.Place.ToString()).ToValueList();
        if (series.Points.Count == 0)
        {
            var few = $"no test with {TestSeries.FewestShots} measured shots; {series.TooFewShots.Count} with fewer";
            return new ReportTrend(series.Place.ToString(), [], series.TooFewShots.Count, others, null, few);
        }

        var figures = TrendFigures.Of(series.Spreads, TrendScale.Logarithm, record.Kinds, series.Freedom);
        var points = series.Points.AsEnumerable().Select((point, i) => PointOf(point, i + 1, figures.Line)).ToValueList();
        return new ReportTrend(series.Place.ToString(), points, series.TooFewShots.Count, others, figures, null);
    }

    private static ReportTrendPoint PointOf(TestPoint point, int session, StraightTrend? line)
    {
        var limits = EstimateLimits.OfSpread(point.SpreadBoards, point.Graded, freedom: point.Freedom);
        var band = line?.LineAt(session);
        return new ReportTrendPoint(
            session,
            point.At,
            point.Graded,
            Math.Exp(point.LogSpread),
            limits.Low,
            limits.High,
            line is null ? null : Math.Exp(line.At(session)),
            band is { } low ? Math.Exp(low.Low) : null,
            band is { } high ? Math.Exp(high.High) : null);
    }

    private static ReportTenShots TenShotsOf(IReadOnlyList<PracticeCrossing> crossings, LaneProfile lane)
    {
        var settings = new AccuracySettings { Lane = lane };
        var bands = PublishedSpreadBand.On(lane);
        var best = crossings.Where(crossing => PublishedSpreadBand.AtTheArrows(Feet.FromFeet(crossing.DistanceFeet)))
            .GroupBy(crossing => (crossing.DistanceFeet, crossing.CentreBoard))
            .Select(place => (Place: place, Tens: TensOf(place, settings)))
            .Where(found => found.Tens.Count > 0)
            .OrderByDescending(found => found.Tens.Count).ThenByDescending(found => found.Place.Count())
            .FirstOrDefault();
        return best.Tens is null
            ? new ReportTenShots(
                null, null, null, [], bands, PublishedSpreadBand.Caveats, "no ten measured shots in one session at one target at the arrows (12 to 16 ft)")
            : new ReportTenShots(
                best.Place.First().Target, best.Place.Key.CentreBoard, best.Place.Key.DistanceFeet, best.Tens.ToValueList(), bands, PublishedSpreadBand.Caveats, null);
    }

    private static List<ReportTen> TensOf(IEnumerable<PracticeCrossing> place, AccuracySettings settings) =>
    [
        .. place.Reverse().GroupBy(crossing => crossing.SessionId).Select(session =>
        {
            var accumulator = new TargetAccuracyAccumulator(session.First().Target, settings);
            foreach (var crossing in session)
            {
                accumulator.Add(ReportShot.TargetOf(crossing));
            }

            return (session.First().At, Spread: accumulator.Result.TenShotSpread.LatestBoards);
        })
        .Where(session => session.Spread is not null)
        .Select(session => new ReportTen(session.At, session.Spread!.Value)),
    ];
}
