using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class SessionRecordBuilderTests
{
    [Fact]
    public void Result_AfterVoidAndTwoCorrections_KeepsTheFirstValueAndCountsTheLast()
    {
        var record = Record(
            new SessionInput.TakeNote(Sample.Start, "arm feels fine"),
            new SessionInput.ShotThrown(Sample.Start, Sample.Shot(8)),
            new SessionInput.Begin(Sample.Start),
            new SessionInput.ShotThrown(Sample.Start, Sample.Shot(10)),
            new SessionInput.ShotThrown(Sample.Start, Sample.Shot(13)),
            new SessionInput.ShotThrown(Sample.Start, Sample.Shot(14)),
            new SessionInput.VoidShot(Sample.Start, 3, "foul"),
            new SessionInput.CorrectShot(Sample.Start, 2, Sample.Shot(12)),
            new SessionInput.CorrectShot(Sample.Start, 2, Sample.Shot(11)));

        var block = Assert.Single(record.Blocks);
        Assert.Equal([1, 2, 3], block.Shots.Select(shot => shot.Shot.Number));
        Assert.Equal(Sample.Shot(11), block.Shots[1].Shot.Shot);
        Assert.Equal(Sample.Shot(13), block.Shots[1].AsFirstGraded!.Shot);
        Assert.Null(block.Shots[0].AsFirstGraded);
        Assert.Equal("foul", block.Shots[2].Shot.VoidReason);

        // 10 is the centre (3 points), 11 a hit (2); the void one is in no figure.
        Assert.Equal((2, 2, 5), (block.Summary.PerTarget[0].Shots, block.Summary.PerTarget[0].Hits, block.Summary.Points));
        Assert.Equal(0.5, block.Summary.PerTarget[0].ConstantErrorBoards);
        Assert.Null(block.Ended);
        Assert.Equal(Sample.Shot(8), Assert.Single(record.SetAside));
        Assert.Equal("arm feels fine", Assert.Single(record.Notes));
        Assert.Null(record.EndedWhy);
    }

    [Fact]
    public void Result_BlockRepeated_HasBothAndTheirEnds()
    {
        var record = Record(
            new SessionInput.Begin(Sample.Start),
            new SessionInput.ShotThrown(Sample.Start, Sample.Shot(10)),
            new SessionInput.Repeat(Sample.Start, Scope.Block),
            new SessionInput.ShotThrown(Sample.Start, Sample.Shot(13)),
            new SessionInput.VoidShot(Sample.Start, 1, "foul"),
            new SessionInput.End(Sample.Start, "enough"));

        Assert.Equal([1, 2], record.Blocks.Select(block => block.Began.Attempt));
        Assert.Equal([BlockEndReason.Repeated, BlockEndReason.SessionEnded], record.Blocks.Select(block => block.Ended!.Why));
        Assert.Empty(record.Blocks[0].Summary.PerTarget);
        Assert.Equal("enough", record.EndedWhy);
    }

    private static SessionRecord Record(params SessionInput[] inputs)
    {
        var builder = new SessionRecordBuilder();
        var state = SessionCore.Open(Sample.Setup(), Sample.Shots(20).Script).State!;
        foreach (var input in inputs)
        {
            var step = SessionCore.Apply(state, input);
            Assert.Null(step.Refusal);
            state = step.State;
            foreach (var happened in step.Events)
            {
                builder.Add(happened);
            }
        }

        return builder.Result();
    }
}
