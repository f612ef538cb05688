using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// A bowler's visits and the series of tests in them. Only test blocks count: their targets keep their width, so that what they show is
/// the bowler. A training block's hit rate is what its sizing holds it at.
/// </summary>
/// <param name="Visits">All visits of the period, oldest first.</param>
/// <param name="Series">One a place, the one with most points first.</param>
public sealed record TestRecord(ValueList<PracticeVisit> Visits, ValueList<TestSeries> Series)
{
    /// <summary>How many series have enough points for a look: the rule's error is shared among these.</summary>
    public int Kinds => KindsOf(Series.Select(series => series.Points.Count));

    /// <summary>The same from the number of points of each series.</summary>
    public static int KindsOf(IEnumerable<int> points) => Math.Max(1, points.Count(count => count >= ImprovementRule.FewestSessions));

    /// <summary>The record of a bowler.</summary>
    /// <param name="blocks">All blocks of the period, in any order. All of one bowler and one hand.</param>
    /// <remarks>
    /// A trend's point is the first test of a visit at that place: blocks with no training between them. The last such test, when it is
    /// another one, is the end of the visit: it enters retention only, since what practice has just done would pass for learning.
    /// </remarks>
    public static TestRecord Of(IEnumerable<PracticeBlock> blocks)
    {
        var sessions = blocks.GroupBy(block => (block.StartedAt, block.SessionId)).OrderBy(session => session.Key.StartedAt)
            .ThenBy(session => session.Key.SessionId, StringComparer.Ordinal).ToList();
        var tests = new List<VisitTests>();
        var visit = new List<IGrouping<(DateTimeOffset StartedAt, string SessionId), PracticeBlock>>();
        foreach (var session in sessions)
        {
            if (visit.Count > 0 && session.Key.StartedAt - visit[0].Key.StartedAt >= PracticeVisit.Longest)
            {
                tests.Add(VisitTests.Of(tests.Count + 1, visit));
                visit.Clear();
            }

            visit.Add(session);
        }

        if (visit.Count > 0)
        {
            tests.Add(VisitTests.Of(tests.Count + 1, visit));
        }

        var series = tests.SelectMany(test => test.Places).Distinct().Select(place => SeriesAt(place, tests))
            .OrderByDescending(one => one.Points.Count).ThenBy(one => one.Place.Feet ?? 0);
        return new TestRecord(tests.Select(test => test.Visit).ToValueList(), series.ToValueList());
    }

    private static TestSeries SeriesAt(TestPlace place, List<VisitTests> tests)
    {
        var starts = tests.Select(test => test.Start(place)).OfType<TestPoint>().ToList();
        var pairs = new List<RetentionPair>();
        for (var i = 1; i < tests.Count; i++)
        {
            if (tests[i - 1].End(place) is { Graded: >= Retention.FewestShots } end && tests[i].Start(place) is { Graded: >= Retention.FewestShots } start)
            {
                pairs.Add(new RetentionPair(end, start));
            }
        }

        return new TestSeries(
            place,
            starts.Where(point => point.Graded >= TestSeries.FewestShots).ToValueList(),
            starts.Where(point => point.Graded < TestSeries.FewestShots).ToValueList(),
            Retention.Of(pairs));
    }
}
