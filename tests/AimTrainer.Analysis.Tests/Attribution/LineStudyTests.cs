using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

public sealed class LineStudyTests
{
    private static readonly AccuracySettings Settings = new() { Lane = LaneProfileReader.Default };

    [Fact]
    public void SetAsideGross_OneMisread_LeavesThePlanOfTheOthers()
    {
        // The ball moves by 2 boards beyond the straight part, give or take 0.2; one reading at 40 ft is 25 boards off.
        var shots = Shots(misread: true);
        var (with, without) = (Study(shots, aside: true), Study(Shots(misread: false), aside: true));

        Assert.True(with.HasGross);
        Assert.Equal(without.Plan, with.Plan);
        Assert.NotEqual(with.Set!.Plan, with.Plan);
        Assert.Equal((20, 21), (with.WithoutGross!.Shots, with.Set.Shots));

        // What one sound shot is told does not hang on the misread of another.
        Assert.Equal(without.Split(shots[0]).Split, with.Split(shots[0]).Split);
        Assert.Equal([null, true], with.Split(shots[^1]).Gross.Select(gross => gross == true ? true : (bool?)null));
    }

    [Fact]
    public void SetAsideGross_NoGrossMiss_ChangesNothing()
    {
        var study = Study(Shots(misread: false), aside: true);

        Assert.False(study.HasGross);
        Assert.Null(study.WithoutGross);
        Assert.Same(study.Set!.Plan, study.Plan);
    }

    [Fact]
    public void Passes_InTheWrongOrder_Throw()
    {
        var study = new LineStudy(Settings);
        var shot = Shots(misread: false)[0];
        Assert.Throws<InvalidOperationException>(() => study.Split(shot));
        Assert.Throws<InvalidOperationException>(() => study.HasGross);
        study.Add(shot);
        study.Close();
        Assert.Throws<InvalidOperationException>(() => study.Add(shot));
    }

    private static LineStudy Study(List<ObservedShot> shots, bool aside)
    {
        var study = new LineStudy(Settings);
        shots.ForEach(study.Add);
        study.Close();
        if (aside)
        {
            study.SetAsideGross(shots);
        }

        return study;
    }

    private static List<ObservedShot> Shots(bool misread)
    {
        var shots = Enumerable.Range(0, 20).Select(i => Shot(i + 1, 9 + (0.2 * ((i % 5) - 2)))).ToList();
        if (misread)
        {
            shots.Add(Shot(21, 34));
        }

        return shots;
    }

    private static ObservedShot Shot(int number, double far)
    {
        var reading = new ShotReading { LaydownBoard = 19.8 };
        reading.AddCrossing(15, 15);
        reading.AddCrossing(40, far);
        var shot = reading.Check(out _)!;
        ObservedTarget Target(string name, double board, double feet) =>
            ObservedTarget.At(name, shot, Board.FromBoards(board), Feet.FromFeet(feet), BoardOffset.FromBoards(3));
        return new ObservedShot(shot, [Target("near", 15, 15), Target("far", 7, 40)]) { NumberInSession = number };
    }
}
