using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The tests of one visit: the first group of test blocks, and the last when it is another.</summary>
internal sealed class VisitTests
{
    private readonly List<PracticeBlock> _start;
    private readonly List<PracticeBlock> _end;
    private readonly int _trainingBefore;

    private VisitTests(PracticeVisit visit, List<PracticeBlock> start, List<PracticeBlock> end, int trainingBefore) =>
        (Visit, _start, _end, _trainingBefore) = (visit, start, end, trainingBefore);

    public PracticeVisit Visit { get; }

    /// <summary>Where the visit tested.</summary>
    public IEnumerable<TestPlace> Places => _start.Concat(_end).Select(block => TestPlace.Of(block.DistanceFeet));

    public static VisitTests Of(int number, IReadOnlyList<IGrouping<(DateTimeOffset StartedAt, string SessionId), PracticeBlock>> sessions)
    {
        var blocks = sessions.SelectMany(session => session).ToList();
        var visit = new PracticeVisit(number, sessions[0].Key.StartedAt, sessions.Count, blocks.Sum(block => block.Shots));
        var groups = new List<List<PracticeBlock>>();
        var (inTest, before, trained) = (false, 0, 0);
        foreach (var run in sessions.SelectMany(session => session.GroupBy(block => block.Run).OrderBy(run => run.Key)))
        {
            if (!run.All(block => block.Kind == BlockKind.Test))
            {
                inTest = false;
                trained += run.Sum(block => block.Shots);
                continue;
            }

            if (!inTest)
            {
                before = groups.Count == 0 ? trained : before;
                groups.Add([]);
                inTest = true;
            }

            groups[^1].AddRange(run);
        }

        return new VisitTests(visit, groups.FirstOrDefault() ?? [], groups.Count > 1 ? groups[^1] : [], before);
    }

    public TestPoint? Start(TestPlace place) => At(place, _start);

    public TestPoint? End(TestPlace place) => At(place, _end);

    private TestPoint? At(TestPlace place, List<PracticeBlock> blocks) =>
        TestPoint.Of(Visit, blocks.FindAll(block => TestPlace.Of(block.DistanceFeet) == place), _trainingBefore);
}
