using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports.Tests;

public sealed class GrossMissTests
{
    private static readonly double?[] Sound = [10.9, 10.2, 11.4, 10.6, 11.1, 10.8, 10.4, 11.2, 10.7, 11.0, 10.5, 10.9, 11.3, 10.6, 10.8];

    [Fact]
    public void Build_OneMisread_MovesNoSentenceAndIsNamed()
    {
        var sound = new MadeBowler().AtTheArrows(Sound).Report();
        var misread = new MadeBowler().AtTheArrows([.. Sound, -2]).Report();

        var target = misread.Lane.Main!;
        Assert.Equal((16, 1), (target.Measured, target.GrossMisses));
        Assert.Equal(sound.Lane.Main!.MeanMissBoards.Value!.Value, target.MeanMissWithoutGrossBoards!.Value!.Value, 1e-12);
        Assert.Equal(sound.Lane.Main.MeanMissBoards.Low!.Value, target.MeanMissWithoutGrossBoards.Low!.Value, 1e-12);
        Assert.Equal(sound.Lane.Main.SpreadBoards.High!.Value, target.SpreadWithoutGrossBoards!.High!.Value, 1e-12);
        Assert.Equal(sound.Lane.Main.Ellipse.HighBoard!.Value, target.Ellipse.HighBoard!.Value, 1e-12);

        // All of the figures have it in: nothing is dropped silently.
        Assert.NotEqual(sound.Lane.Main.MeanMissBoards.Value, target.MeanMissBoards.Value);
        Assert.Equal($"{sound.Sentences[0].Text} 1 gross miss set aside (board -2 on 2026-09-01: misread or real?).", misread.Sentences[0].Text);
        Assert.Equal((WorkOnRule.Lean, sound.WorkOn), (sound.WorkOn.Rule, misread.WorkOn));
        Assert.Contains(misread.Notes, note => note.StartsWith("1 gross miss", StringComparison.Ordinal));
        Assert.DoesNotContain(sound.Notes, note => note.Contains("gross", StringComparison.Ordinal));
    }

    [Fact]
    public void Build_ManyFarOff_AreNotSetAside()
    {
        var report = new MadeBowler().AtTheArrows([.. Sound, -2, -2, -1]).Report();

        Assert.Equal((3, (BoundedEstimate?)null), (report.Lane.Main!.GrossMisses, report.Lane.Main.MeanMissWithoutGrossBoards));
        Assert.Contains("Over 18 shots", report.Sentences[0].Text, StringComparison.Ordinal);
        Assert.EndsWith(" 3 shots lie far off the others: too many for misreads, so none is set aside. Were all of them thrown at this target?", report.Sentences[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_MisreadOnALine_MovesNoShare()
    {
        (double Feet, double Centre, double Width)[] line = [(15, 15, 3), (40, 8, 5)];
        var shots = Enumerable.Range(0, 24).Select(i =>
        {
            var (laydown, slope) = (19.2 + (0.1 * ((i % 5) - 2)), -0.28 + (0.03 * ((i % 7) - 3)));
            return ((double?)laydown, (double?[])[laydown + (15 * slope), laydown + (40 * slope) + (0.1 * ((i % 3) - 1))]);
        }).ToList();
        var sound = new MadeBowler().Session(0, "two-point-line", BlockKind.Training, line, shots).Report();
        var misread = new MadeBowler().Session(0, "two-point-line", BlockKind.Training, line, [.. shots, (19.2, [15, 38])]).Report();

        Assert.Equal((1, 24), (misread.Causes.GrossSetAside, misread.Causes.Split));
        Assert.Equal(sound.Causes.Shares!.AngleShare.Value!.Value, misread.Causes.Shares!.AngleShare.Value!.Value, 1e-12);
        Assert.Equal($"{sound.Sentences[1].Text} 1 shot with a gross miss set aside.", misread.Sentences[1].Text);
    }

    [Fact]
    public void Build_LineOnTwoLanes_IsSplitByEachSessionsLane()
    {
        // The second session's lane runs straight for 45 ft: there the ball at 40 ft is no reading beyond the straight part.
        (double Feet, double Centre, double Width)[] line = [(15, 15, 3), (40, 8, 5)];
        IEnumerable<(double? Laydown, double?[] Boards)> Shots(int count) => Enumerable.Range(0, count).Select(i =>
        {
            var (laydown, slope) = (19.2 + (0.1 * ((i % 5) - 2)), -0.28 + (0.03 * ((i % 7) - 3)));
            return ((double?)laydown, (double?[])[laydown + (15 * slope), laydown + (40 * slope) + 0.05]);
        });
        var made = new MadeBowler().Session(0, "two-point-line", BlockKind.Training, line, Shots(20)).Session(3, "two-point-line", BlockKind.Training, line, Shots(12));
        var (one, other) = (LaneProfileReader.Default, LaneProfileReader.Default with { Name = "dry", StraightDistance = Feet.FromFeet(45) });
        ReportLanes Lanes(LaneProfile first, LaneProfile second) =>
            new(second, new Dictionary<string, LaneProfile>(StringComparer.Ordinal) { ["s1"] = first, ["s2"] = second });

        Assert.Equal(32, made.Report(lanes: Lanes(one, one with { Name = "the same by another name" })).Causes.Split);
        var apart = made.Report(lanes: Lanes(one, other)).Causes;
        Assert.Equal(20, apart.Split);
        Assert.Equal(0.05, apart.Target!.BentBoards.Value!.Value, 0.02);
        var newer = made.Report(lanes: Lanes(other, one)).Causes;
        Assert.Equal(20, newer.Split);
        Assert.True(newer.Target!.BentBoards.Value!.Value < 0.05);
    }
}
