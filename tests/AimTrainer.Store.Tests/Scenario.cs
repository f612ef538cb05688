using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store.Tests;

/// <summary>An invented session, made by hand: the store does not care who made the events.</summary>
internal static class Scenario
{
    public static DateTimeOffset Start { get; } = new(2026, 3, 7, 19, 30, 0, 125, TimeSpan.FromHours(2));

    public static DrillSource Drill(string id = "arrow-narrowing", string text = """{ "id": "arrow-narrowing" }""") => new(
        new DrillScript
        {
            Id = id,
            Name = "Narrowing at one arrow",
            Purpose = "Accuracy at the arrows",
            WhoFor = "Everybody",
            AboutMinutes = 20,
            Blocks =
            [
                new DrillBlock
                {
                    Name = "second arrow",
                    Kind = BlockKind.Training,
                    Aims =
                    [
                        new AimPlan("arrow 2",
                        [
                            new TargetPlan
                            {
                                Name = "arrow 2",
                                Place = new TargetPlace.AtMark(MarkerKind.Arrow, 2, BoardOffset.Zero),
                                Sizing = new FixedSizing(),
                            },
                        ]),
                    ],
                    Order = new Order.Serial(),
                    Until = new BlockEnd { Shots = 10 },
                    Feedback = new Feedback(new FeedbackWhen.Every(), FeedbackSays.Exact),
                },
            ],
        },
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))),
        text);

    public static LaneProfile Lane { get; } = new()
    {
        Name = "lane 7",
        Width = Inches.FromInches(41.5),
        ArrowsDistance = Feet.FromFeet(15),
        StraightDistance = Feet.FromFeet(20),
        Markers = [new LaneMarker(MarkerKind.Arrow, Board.FromBoards(10), Feet.FromFeet(13.5))],
    };

    public static SessionSetup Setup(string id = "s1", string bowler = "Ann Lee", DrillSource? drill = null) => new()
    {
        SessionId = id,
        Station = 7,
        At = Start,
        Bowler = bowler,
        Hand = Hand.Right,
        Ball = "blue one",
        DrillId = (drill ?? Drill()).Script.Id,
        DrillHash = (drill ?? Drill()).Hash,
        Lane = Lane,
        Seed = ulong.MaxValue,
        PatternLength = Feet.FromFeet(42),
        LaneNote = "fresh \"oil\" – no \u00e9vidence",
    };

    public static Aim Line { get; } = new("line", [At("arrows", 10, 15), At("downlane", 7, 42)]);

    public static Shot Shot(
        double arrows = 10.25, double? laydown = 14, double? mph = 17.2, SpeedPlace place = SpeedPlace.Release, string? ball = null) =>
        Shot(reading =>
        {
            reading.AddCrossing(15, arrows);
            reading.LaydownBoard = laydown;
            reading.SpeedMilesPerHour = mph;
            reading.SpeedPlace = place;
            reading.Ball = ball;
        });

    public static Shot Shot(Action<ShotReading> fill)
    {
        var reading = new ShotReading { Source = ShotSource.File, Time = Start };
        fill(reading);
        return reading.Check(out var problems) ?? throw new ArgumentException(problems.ToString());
    }

    public static GradedShot Graded(int number, Shot shot, Aim? aim = null, int run = 0)
    {
        var results = Grader.Grade(shot, aim ?? Line, GradeBands.Default);
        return new GradedShot
        {
            Number = number,
            At = Start.AddMinutes(number),
            Shot = shot,
            Run = run,
            Aim = (aim ?? Line).Name,
            Targets = results,
            Held = Grader.Held(results),
            Points = Grader.Points(results),
            Comparability = new Comparability(null, ["revs not measured"]),
            LaunchAngle = LaunchAngles.Of(shot, Lane),
        };
    }

    public static LogEntry Began(long sequence = 1) => new(
        sequence, new SessionInput.Begin(Start),
        [new SessionEvent.BlockBegan(0, 0, "second arrow", BlockKind.Training, 1), new SessionEvent.AimShown(1, Line, 0)]);

    public static LogEntry Thrown(long sequence, GradedShot graded) => new(
        sequence, new SessionInput.ShotThrown(graded.At, graded.Shot),
        [
            new SessionEvent.ShotGraded(
                graded, [new NextWidth(BoardOffset.FromBoards(3), false, false)],
                new Told([new ToldShot(graded.Number, graded.Held, [new ToldTarget("arrows", 1, BoardOffset.FromBoards(0.25))])])),
            new SessionEvent.AimShown(graded.Number + 1, Line, 0),
        ]);

    public static LogEntry Ended(long sequence) => new(
        sequence, new SessionInput.End(Start.AddHours(1), "done"),
        [new SessionEvent.BlockEnded(0, "second arrow", BlockEndReason.SessionEnded, []), new SessionEvent.SessionEnded("done")]);

    public static LogEntry Noted(long sequence) =>
        new(sequence, new SessionInput.TakeNote(Start.AddMinutes(sequence), $"note {sequence}"), [new SessionEvent.NoteTaken($"note {sequence}")]);

    /// <summary>Keeps a session of so many shots: one step to begin, then one a shot.</summary>
    public static async Task KeepAsync(ISessionStore store, SessionSetup setup, params Shot[] shots)
    {
        await store.CreateAsync(setup, Drill(), Cancel);
        await store.AppendAsync(setup.SessionId, Began(), Cancel);
        for (var i = 0; i < shots.Length; i++)
        {
            await store.AppendAsync(setup.SessionId, Thrown(i + 2, Graded(i + 1, shots[i])), Cancel);
        }
    }

    public static async Task<List<LogEntry>> LogAsync(ISessionStore store, string sessionId)
    {
        var entries = new List<LogEntry>();
        await foreach (var entry in store.ReadLogAsync(sessionId, Cancel))
        {
            entries.Add(entry);
        }

        return entries;
    }

    public static string Json<T>(T value) => JsonSerializer.Serialize(value, DomainJson.Options);

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static NamedTarget At(string name, double board, double feet) =>
        new(name, new Target(Board.FromBoards(board), BoardOffset.FromBoards(3), Feet.FromFeet(feet)));
}
