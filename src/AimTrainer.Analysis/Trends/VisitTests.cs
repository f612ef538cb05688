using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>The groups of test blocks of one visit: blocks with no training between them.</summary>
internal sealed class VisitTests
{
    private readonly List<(List<PracticeBlock> Blocks, int TrainingBefore)> _groups;

    private VisitTests(PracticeVisit visit, List<(List<PracticeBlock> Blocks, int TrainingBefore)> groups) => (Visit, _groups) = (visit, groups);

    public PracticeVisit Visit { get; }

    /// <summary>Where the visit tested.</summary>
    public IEnumerable<TestPlace> Places => _groups.SelectMany(group => group.Blocks).Select(block => TestPlace.Of(block.DistanceFeet));

    public static VisitTests Of(int number, IReadOnlyList<IGrouping<(DateTimeOffset StartedAt, string SessionId), PracticeBlock>> sessions)
    {
        var throws = sessions.Sum(session => session.Sum(block => block.Shots));
        var groups = new List<(List<PracticeBlock> Blocks, int TrainingBefore)>();
        var (inTest, trained) = (false, 0);
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
                groups.Add(([], trained));
                inTest = true;
            }

            groups[^1].Blocks.AddRange(run);
        }

        return new VisitTests(new PracticeVisit(number, sessions[0].Key.StartedAt, sessions.Count, throws), groups);
    }

    /// <summary>The first test there.</summary>
    public TestPoint? Start(TestPlace place) => Groups(place) is [var first, ..] ? At(place, first) : null;

    /// <summary>The last test there, when it is another one.</summary>
    public TestPoint? End(TestPlace place) => Groups(place) is [_, .., var last] ? At(place, last) : null;

    private List<(List<PracticeBlock> Blocks, int TrainingBefore)> Groups(TestPlace place) =>
        _groups.FindAll(group => group.Blocks.Exists(block => TestPlace.Of(block.DistanceFeet) == place));

    private TestPoint? At(TestPlace place, (List<PracticeBlock> Blocks, int TrainingBefore) group) =>
        TestPoint.Of(Visit, group.Blocks.FindAll(block => TestPlace.Of(block.DistanceFeet) == place), group.TrainingBefore);
}
