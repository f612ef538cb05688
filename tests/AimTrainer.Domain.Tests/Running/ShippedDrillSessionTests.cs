namespace AimTrainer.Domain.Tests;

public class ShippedDrillSessionTests
{
    /// <summary>More than any shipped drill asks for at most.</summary>
    private const int Bound = 1000;

    private static readonly SessionSetup Setup = Play.Setup with
    {
        Lane = LaneProfileReader.Default,
        RecordedBreakpoint = new Breakpoint(Board.FromBoards(7), Feet.FromFeet(42)),
        PatternLength = Feet.FromFeet(40),
    };

    public static TheoryData<string> Names => [.. TestFiles.ShippedDrills()];

    [Theory]
    [MemberData(nameof(Names))]
    public void Drill_GoodBowler_Ends(string name) => Ends(name, (random, _) => 0.8 * ((random() * 2) - 1));

    [Theory]
    [MemberData(nameof(Names))]
    public void Drill_WildBowler_Ends(string name) => Ends(name, (random, target) => Math.Max(-4 - target.Centre.Boards, 12 * ((random() * 2) - 1)));

    [Theory]
    [MemberData(nameof(Names))]
    public void Drill_NothingMeasured_Ends(string name) => Ends(name, (_, _) => null);

    [Theory]
    [MemberData(nameof(Names))]
    public void Drill_AlwaysMissed_Ends(string name) => Ends(name, (_, target) => target.Centre.Boards > 20 ? -15 : 15);

    [Theory]
    [MemberData(nameof(Names))]
    public void Drill_ForShotsAlone_SameEvents(string name)
    {
        var whole = Ends(name, (random, _) => 4 * ((random() * 2) - 1));
        var events = new List<SessionEvent>();
        var state = SessionCore.Open(With(whole.State.Drill), whole.State.Drill).State!.ForShotsAlone();
        foreach (var input in whole.Inputs)
        {
            var step = SessionCore.Apply(state, input);
            state = step.State;
            events.AddRange(step.Events);
        }

        Assert.Equal(whole.Events, events);
    }

    /// <summary>The setup with a ball for each role of a comparison.</summary>
    private static SessionSetup With(DrillScript drill) => Setup with
    {
        Balls = drill.Blocks.Select(block => block.Order).OfType<Order.Compare>().SelectMany(order => order.Balls).Distinct()
            .Select(role => new ChosenBall(role, $"Ball {role}")).ToValueList(),
    };

    private static Play Ends(string name, Func<Func<double>, Target, double?> missOf)
    {
        var drill = DrillReader.Read(name, File.ReadAllBytes(TestFiles.Drill(name))).Value!;
        var play = Play.Begun(drill, With(drill));
        var position = 0UL;
        for (var i = 0; i < Bound && play.State.Phase != SessionPhase.Ended; i++)
        {
            play.Throw([.. play.Shown.Targets.Select(target => missOf(() => SeededRandom.Unit(5, position++), target.Target))]);
        }

        Assert.Equal(SessionPhase.Ended, play.State.Phase);
        Assert.Equal(new SessionEvent.SessionEnded("all blocks were thrown"), play.Events[^1]);
        Assert.Equal(drill.Blocks.Count, play.Events.OfType<SessionEvent.BlockEnded>().Count());
        return play;
    }
}
