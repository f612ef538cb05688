using System.Text;

namespace AimTrainer.Domain.Tests;

public sealed class DrillReaderTests
{
    [Fact]
    public void Read_Head_KeepsEveryValue()
    {
        var drill = Read(MadeDrills.Good.Replace("\"aboutMinutes\": 10,", "\"aboutMinutes\": 10, \"cautions\": [\"Mind the step.\"], \"asksHowArmFeels\": true,", StringComparison.Ordinal));

        Assert.Equal(("good", "Good", "Shows a drill.", "Tests.", 10, true), (drill.Id, drill.Name, drill.Purpose, drill.WhoFor, drill.AboutMinutes, drill.AsksHowArmFeels));
        Assert.Equal(["Mind the step."], drill.Cautions);
    }

    [Fact]
    public void Read_BlockWithNoMoreThanItNeeds_HasTheDefaults()
    {
        var expected = new DrillBlock
        {
            Name = "one",
            Kind = BlockKind.Training,
            Aims =
            [
                new AimPlan("ten",
                [
                    new TargetPlan
                    {
                        Name = "ten",
                        Place = new TargetPlace.AtBoard(Board.FromBoards(10), Feet.FromFeet(15)),
                        Width = BoardOffset.FromBoards(3),
                        Sizing = new FixedSizing { Narrowest = BoardOffset.FromBoards(0.5), Widest = BoardOffset.FromBoards(20) },
                    },
                ]),
            ],
            Order = new Order.Serial(),
            Until = new BlockEnd { Shots = 10 },
            Feedback = new Feedback(new FeedbackWhen.Every(), FeedbackSays.Exact),
        };

        Assert.Equal(expected, Read(MadeDrills.Good).Blocks[0]);
    }

    [Fact]
    public void Read_TestBlock_HasNoFeedbackUnlessGiven() =>
        Assert.IsType<FeedbackWhen.None>(Read(MadeDrills.Good.Replace("training", "test", StringComparison.Ordinal)).Blocks[0].Feedback.When);

    [Theory]
    [InlineData("""{ "kind": "blocked", "shotsEach": 5 }""", "Blocked { ShotsEach = 5 }")]
    [InlineData("""{ "kind": "serial" }""", "Serial { }")]
    [InlineData("""{ "kind": "random" }""", "ByChance { Seed = , LongestRun = 2 }")]
    [InlineData("""{ "kind": "random", "seed": 9007199254740991, "longestRun": 3 }""", "ByChance { Seed = 9007199254740991, LongestRun = 3 }")]
    public void Read_Order_IsWhatTheFileSays(string order, string expected)
    {
        var block = Read(MadeDrills.Good
            .Replace("\"widthBoards\": 3 }", "\"widthBoards\": 3 }, { \"name\": \"twelve\", \"board\": 12, \"feet\": 15, \"widthBoards\": 3 }", StringComparison.Ordinal)
            .Replace("""{ "kind": "serial" }""", order, StringComparison.Ordinal)).Blocks[0];

        Assert.Equal(expected, block.Order.ToString());
    }

    [Theory]
    [InlineData("\"everyShots\": 4", "AfterShots { Shots = 4 }", WalkEnd.Stop)]
    [InlineData("\"afterHolds\": 2, \"atEnd\": \"turn\"", "AfterHolds { Holds = 2 }", WalkEnd.Turn)]
    public void Read_Walk_IsWhatTheFileSays(string when, string expected, WalkEnd end)
    {
        var order = $$"""{ "kind": "walk", "to": { "mark": "arrow 4" }, "moveBoards": 1.5, {{when}} }""";
        var walk = Assert.IsType<Order.Walk>(Read(MadeDrills.Good.Replace("""{ "kind": "serial" }""", order, StringComparison.Ordinal)).Blocks[0].Order);

        Assert.Equal(new TargetPlace.AtMark(MarkerKind.Arrow, 4, BoardOffset.Zero), walk.To);
        Assert.Equal((1.5, expected, end), (walk.Move.Boards, walk.When.ToString(), walk.AtEnd));
    }

    [Fact]
    public void Read_WalkThatStopsByItself_NeedsNoUntil()
    {
        var json = MadeDrills.Good
            .Replace("""{ "kind": "serial" }""", """{ "kind": "walk", "to": { "board": 20 }, "moveBoards": 2, "everyShots": 3 }""", StringComparison.Ordinal);
        var without = json.Remove(json.IndexOf(",\n      \"until\"", StringComparison.Ordinal), ",\n      \"until\": { \"shots\": 10 }".Length);

        Assert.Equal(new BlockEnd(), Read(without).Blocks[0].Until);
    }

    [Theory]
    [MemberData(nameof(Sizings))]
    public void Read_Sizing_IsWhatTheFileSays(string sizing, Sizing expected) => Assert.Equal(
        expected,
        Read(MadeDrills.Good.Replace("\"order\"", $"\"sizing\": {sizing}, \"order\"", StringComparison.Ordinal)).Blocks[0].Aims[0].Targets[0].Sizing);

    public static IEnumerable<TheoryDataRow<string, Sizing>> Sizings() =>
    [
        new("""{ "kind": "ladder", "widthsBoards": [5, 3, 1], "hits": 4, "misses": 3, "ofLast": 5 }""",
            new LadderSizing([BoardOffset.FromBoards(5), BoardOffset.FromBoards(3), BoardOffset.FromBoards(1)], 4, 3, 5)),
        new("""{ "kind": "staircase", "hits": 2, "misses": 1, "stepBoards": 0.5 }""",
            new StaircaseSizing(2, 1, new StaircaseStep.ByBoards(BoardOffset.FromBoards(0.5)), 6)),
        new("""{ "kind": "staircase", "hits": 2, "misses": 1, "stepFactor": 1.25, "reversals": 8, "narrowestBoards": 0.5, "widestBoards": 12 }""",
            new StaircaseSizing(2, 1, new StaircaseStep.ByFactor(1.25), 8) { Narrowest = BoardOffset.FromBoards(0.5), Widest = BoardOffset.FromBoards(12) }),
        new("""{ "kind": "weighted" }""", new WeightedSizing(0.75, 0.125)),
        new("""{ "kind": "weighted", "goalHitRate": 0.8, "narrowerOctaves": 0.25 }""", new WeightedSizing(0.8, 0.25)),
        new("""{ "kind": "scatter" }""", new ScatterSizing(0.75, 0.98, BoardOffset.FromBoards(1.6))),
        new("""{ "kind": "scatter", "goalHitRate": 0.6, "keep": 1, "priorSpreadBoards": 2 }""", new ScatterSizing(0.6, 1, BoardOffset.FromBoards(2))),
    ];

    [Theory]
    [InlineData("""{ "when": "fading", "firstShare": 1, "lastShare": 0.3, "says": "side" }""", "Feedback { When = Fading { FirstShare = 1, LastShare = 0.3, OverShots = 10 }, Says = Side }")]
    [InlineData("""{ "when": "summary", "everyShots": 5 }""", "Feedback { When = Summary { Shots = 5 }, Says = Exact }")]
    [InlineData("""{ "when": "outside", "says": "hit" }""", "Feedback { When = Outside { }, Says = Hit }")]
    public void Read_Feedback_IsWhatTheFileSays(string feedback, string expected) => Assert.Equal(
        expected,
        Read(MadeDrills.Good.Replace("\"order\"", $"\"feedback\": {feedback}, \"order\"", StringComparison.Ordinal)).Blocks[0].Feedback.ToString());

    [Fact]
    public void Read_Comparable_IsWhatTheFileSays()
    {
        const string Comparable = """{ "speedWithinMph": 1, "laydownWithinBoards": 1.5, "expect": { "speedMph": 17.5, "speedAt": "pins", "laydownBoard": 20 }, "leaveOutOfSizing": true }""";
        var expected = new ComparableLimits
        {
            SpeedWithin = MilesPerHour.FromMilesPerHour(1),
            LaydownWithin = BoardOffset.FromBoards(1.5),
            Given = new Baseline { Speed = new BallSpeed(MilesPerHour.FromMilesPerHour(17.5), SpeedPlace.Pins), Laydown = Board.FromBoards(20) },
            LeftOutOfSizing = true,
        };

        Assert.Equal(expected, Read(MadeDrills.Good.Replace("\"order\"", $"\"comparable\": {Comparable}, \"order\"", StringComparison.Ordinal)).Blocks[0].Comparable);
    }

    [Fact]
    public void Read_WrongValue_IsReportedOnceWithoutFollowers()
    {
        var read = DrillReader.Read("f", Encoding.UTF8.GetBytes(MadeDrills.Good.Replace("\"widthBoards\": 3", "\"widthBoards\": \"three\"", StringComparison.Ordinal)));

        Assert.Null(read.Value);
        Assert.Equal("$.blocks[0].aims[0].widthBoards", Assert.Single(read.Problems).Path);
    }

    private static DrillScript Read(string json)
    {
        var read = DrillReader.Read("f", Encoding.UTF8.GetBytes(json));
        Assert.Empty(read.Problems);
        return read.Value!;
    }
}
