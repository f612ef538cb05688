using System.Text.Json;

namespace AimTrainer.Domain.Tests;

public class RoundTripTests
{
    private static readonly Shot Full = SampleShot.Of(
        [(15, 10.25), (42.5, 7)],
        reading =>
        {
            reading.Id = "shot-1";
            reading.Time = Play.Start.AddSeconds(1.5);
            reading.Source = ShotSource.Sensor;
            reading.LaydownBoard = 12.5;
            reading.BreakpointBoard = 6.5;
            reading.BreakpointFeet = 41;
            reading.EntryBoard = 17.25;
            reading.EntryAngleDegrees = 4.5;
            reading.LaunchAngleDegrees = 1.125;
            reading.SpeedMilesPerHour = 17.2;
            reading.SpeedPlace = SpeedPlace.Release;
            reading.RevsRpm = 310;
            reading.AxisRotationDegrees = 45;
            reading.AxisTiltDegrees = 12;
            reading.Pins = 9;
            reading.Ball = "Ball 1";
            reading.Note = "10 pin";
        });

    private static readonly Target Spot = new(Board.FromBoards(10), BoardOffset.FromBoards(3), Feet.FromFeet(15));

    private static readonly GradedShot Graded = new()
    {
        Number = 3,
        At = Play.Start,
        Shot = Full,
        Run = 1,
        Aim = "aim",
        Targets =
        [
            new TargetResult("spot", Spot, new TargetCrossing(CrossingKind.Interpolated, Board.FromBoards(10.25)), BoardOffset.FromBoards(0.25), new Grade("centre", 3, true)),
            new TargetResult("far", Spot, TargetCrossing.Unknown, null, null),
        ],
        Held = null,
        Points = 3,
        Comparability = new Comparability(null, ["revs not measured"]),
        LaunchAngle = new LaunchAngle(Degrees.FromDegrees(1.125), true),
        Place = 2,
        Compared = new ThrownBall { Due = "Ball 1", Ball = "Ball 2", Role = "other", IsNamed = true, CheckWasDue = true, NotGood = "why" },
        VoidReason = "foul",
    };

    private static readonly Told Told = new([new ToldShot(3, false, [new ToldTarget("spot", -1, BoardOffset.FromBoards(-1.5))])]);

    private static readonly SessionInput[] Inputs =
    [
        new SessionInput.ShotThrown(Play.Start, Full),
        new SessionInput.Begin(Play.Start),
        new SessionInput.Pause(Play.Start),
        new SessionInput.Resume(Play.Start),
        new SessionInput.End(Play.Start, "why"),
        new SessionInput.Skip(Play.Start, Scope.Block),
        new SessionInput.Repeat(Play.Start, Scope.Aim),
        new SessionInput.VoidShot(Play.Start, 4, "foul"),
        new SessionInput.CorrectShot(Play.Start, 4, Full),
        new SessionInput.ChangeTarget(Play.Start, "spot", BoardOffset.FromBoards(2.5), Board.FromBoards(11), Feet.FromFeet(40)),
        new SessionInput.TakeNote(Play.Start, "a note"),
        new SessionInput.ClockTick(Play.Start),
    ];

    private static readonly SessionEvent[] Events =
    [
        new SessionEvent.BlockBegan(1, 2, "block", BlockKind.Test, 3),
        new SessionEvent.AimShown(4, new Aim("aim", [new NamedTarget("spot", Spot)]), 2)
        {
            Turn = new BallTurn { Due = new ChosenBall("reference", "Ball 1"), IsCheck = true, Line = 1, Lines = 3, Balls = [new BallCell("reference", "Ball 1", 2, 4, 3, 8)] },
        },
        new SessionEvent.ShotGraded(Graded, [new NextWidth(BoardOffset.FromBoards(2.5), true, true)], Told),
        new SessionEvent.ShotSetAside(Full, "why"),
        new SessionEvent.ShotVoided(3, "foul"),
        new SessionEvent.ShotCorrected(Graded, Graded with { VoidReason = null }),
        new SessionEvent.TargetChanged("spot", Spot, Spot),
        new SessionEvent.AimSkipped("aim"),
        new SessionEvent.AimRepeated("aim"),
        new SessionEvent.BlockEnded(1, "block", BlockEndReason.WidthReached, [new TargetThreshold("spot", new Threshold(2.5, 6))]) { Told = Told },
        new SessionEvent.SessionPaused(),
        new SessionEvent.SessionResumed(),
        new SessionEvent.SessionEnded("why"),
        new SessionEvent.NoteTaken("a note"),
    ];

    [Fact]
    public void Inputs_EveryType_ComesBackEqual() => EveryTypeComesBackEqual(Inputs);

    [Fact]
    public void Events_EveryType_ComesBackEqual() => EveryTypeComesBackEqual(Events);

    private static void EveryTypeComesBackEqual<T>(T[] samples)
        where T : class
    {
        var types = typeof(T).GetNestedTypes().Where(type => type.IsSubclassOf(typeof(T)));
        Assert.Equal(types.Select(type => type.Name).Order(), samples.Select(sample => sample.GetType().Name).Order());
        Assert.All(samples, sample =>
        {
            var json = JsonSerializer.Serialize(sample, DomainJson.Options);
            var back = JsonSerializer.Deserialize<T>(json, DomainJson.Options)!;
            Assert.Equal(sample, back);
            Assert.Equal(json, JsonSerializer.Serialize(back, DomainJson.Options));
        });
    }
}
