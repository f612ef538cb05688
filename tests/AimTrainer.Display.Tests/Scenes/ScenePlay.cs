using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display.Tests;

/// <summary>A session for scenes: an invented bowler, a drill from JSON, inputs half a minute apart, and the snapshot a station would give.</summary>
internal sealed class ScenePlay
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 18, 0, 0, TimeSpan.Zero);

    private readonly SessionInProgress _session;
    private DateTimeOffset _now = Start;

    private ScenePlay(SessionState state) => _session = new SessionInProgress(state);

    /// <summary>With the whole name on screens, as one who agreed to it: the longest that must fit.</summary>
    public SessionSnapshot Snapshot => _session.Picture() is { Setup: { Simulated: false } setup } picture ? picture with { NameOnScreen = setup.Bowler } : _session.Picture();

    public static string Target(string name, double board, double feet, double width, string rest = "") => FormattableString.Invariant(
        $$"""{ "name": "{{name}}", "board": {{board}}, "feet": {{feet}}, "widthBoards": {{width}}{{rest}} }""");

    public static string Line(params string[] targets) => $$"""{ "name": "line", "line": [{{string.Join(", ", targets)}}] }""";

    public static string Block(string aims, string rest = """ "until": { "shots": 20 } """, string order = """{ "kind": "serial" }""", string name = "Narrow at the arrows") =>
        $$"""{ "name": "{{name}}", "kind": "training", "aims": [{{aims}}], "order": {{order}}, {{rest}} }""";

    public static DrillScript Drill(string[] blocks, string name = "Three arrows", string cautions = "")
    {
        var read = DrillReader.Read("test", Encoding.UTF8.GetBytes(
            $$"""
            { "format": 1, "id": "drill", "name": "{{name}}", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 5,
              "cautions": [{{cautions}}], "blocks": [{{string.Join(", ", blocks)}}] }
            """));
        return read.Value ?? throw Refused(read.Problems);
    }

    public static ScenePlay Waiting(DrillScript drill, Hand hand = Hand.Right, string bowler = "Bowler A", int station = 7, bool simulated = false, ValueList<ChosenBall>? balls = null)
    {
        var opening = SessionCore.Open(
            new SessionSetup
            {
                SessionId = "session-1",
                Station = station,
                At = Start,
                Bowler = bowler,
                Hand = hand,
                DrillId = "drill",
                DrillHash = "none",
                Lane = LaneProfileReader.Default,
                Seed = 7,
                Simulated = simulated,
                Balls = balls ?? [],
            },
            drill);
        return new ScenePlay(opening.State ?? throw Refused(opening.Problems));
    }

    public static ScenePlay Begun(params string[] blocks) => Begun(Hand.Right, blocks);

    public static ScenePlay Begun(Hand hand, params string[] blocks) => Waiting(Drill(blocks), hand).Do(at => new SessionInput.Begin(at));

    public ScenePlay Do(Func<DateTimeOffset, SessionInput> input)
    {
        _now += TimeSpan.FromSeconds(30);
        var done = input(_now);
        var step = SessionCore.Apply(_session.State, done);
        if (step.Refusal is { } refusal)
        {
            throw Refused([refusal]);
        }

        _session.Accept(new LogEntry(_session.Sequence + 1, done, step.Events), step.State);
        return this;
    }

    /// <summary>
    /// A shot that crosses every shown target this far inside of its centre (null: not measured there), laid down two boards inside of the first
    /// and, when <paramref name="pins"/>, seen at the pins too.
    /// </summary>
    public ScenePlay ThrowAt(bool pins, params double?[] misses) => ThrowWith(null, pins, misses);

    /// <summary>The same with a ball that the shot names.</summary>
    public ScenePlay ThrowWith(string? ball, bool pins, params double?[] misses)
    {
        var reading = new ShotReading { Ball = ball };
        var targets = _session.State.Shown!.Targets;
        for (var i = 0; i < targets.Count; i++)
        {
            if (misses[Math.Min(i, misses.Length - 1)] is { } miss)
            {
                reading.AddCrossing(targets[i].Target.Distance.Value, targets[i].Target.Centre.Boards + miss);
                if (i == 0 && pins)
                {
                    reading.LaydownBoard = targets[i].Target.Centre.Boards + miss + 2;
                    reading.EntryBoard = 17.5;
                }
            }
        }

        var shot = reading.Check(out var problems);
        return Do(at => new SessionInput.ShotThrown(at, shot ?? throw Refused(problems)));
    }

    public ScenePlay Throw(params double[] misses)
    {
        foreach (var miss in misses)
        {
            ThrowAt(true, miss);
        }

        return this;
    }

    /// <summary>The benchmarks play these sessions too, and know nothing of a test's assertions.</summary>
    private static InvalidOperationException Refused<T>(IEnumerable<T> problems) => new(string.Join("; ", problems));
}
