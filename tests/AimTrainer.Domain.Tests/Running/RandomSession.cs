using CsCheck;

namespace AimTrainer.Domain.Tests;

/// <summary>Sessions of drills that use every order, sizing and feedback, with random shots and coach's actions.</summary>
internal static class RandomSession
{
    private const string Two =
        """{ "name": "a", "board": 5, "feet": 15, "widthBoards": 3 }, { "name": "b", "board": 30, "feet": 15, "widthBoards": 4 }""";

    private const string Line =
        """
        { "name": "line", "line": [
          { "name": "near", "mark": "arrow 2", "widthBoards": 3 },
          { "name": "far", "board": 8, "feet": 40, "widthBoards": 5, "walkRatio": 0.5 }] }
        """;

    public static IReadOnlyList<DrillScript> Drills { get; } =
    [
        Play.Drill(
            Play.Block(Two, """ "order": { "kind": "random", "longestRun": 2 }, "until": { "shots": 9 }, "sizing": { "kind": "scatter" }, "feedback": { "when": "summary", "everyShots": 4 } """, "one"),
            Play.Block(Line, """ "order": { "kind": "walk", "to": { "mark": "arrow 4" }, "moveBoards": 3, "everyShots": 2 }, "feedback": { "when": "outside" } """, "two")),
        Play.Drill(
            Play.Block(Line, """ "order": { "kind": "walk", "to": { "board": 16 }, "moveBoards": 2.5, "afterHolds": 2, "atEnd": "turn" }, "until": { "shots": 25, "minutes": 10 }, "sizing": { "kind": "weighted" } """, "one"),
            Play.Block(Two, """ "order": { "kind": "blocked", "shotsEach": 3 }, "until": { "shots": 12, "hitsInARow": 4 }, "feedback": { "when": "fading", "firstShare": 1, "lastShare": 0.2 } """, "two")),
        Play.Drill(
            Play.Block(
                """{ "name": "a", "board": 5, "feet": 15, "sizing": { "kind": "ladder", "widthsBoards": [5, 3, 2], "hits": 2, "misses": 2, "ofLast": 3 } }, { "name": "b", "board": 10, "feet": 15, "sizing": { "kind": "staircase", "hits": 2, "misses": 1, "stepFactor": 1.4 } }""",
                """ "order": { "kind": "serial" }, "until": { "shots": 20, "widthBoards": 2 }, "comparable": { "laydownWithinBoards": 2, "expect": { "laydownBoard": 12 }, "leaveOutOfSizing": true } """)),
        Play.Drill(
            ComparisonPlay.Block(ComparisonPlay.TwoLines, """ "throwing": "mirrored", "goodThrowsEach": 2, "mostThrowsEach": 3, "checkEvery": 4 """, """, "comparable": { "laydownWithinBoards": 3, "expect": { "laydownBoard": 12 } }"""),
            Play.OneTarget(""" "until": { "shots": 3 } """, "after")),
    ];

    /// <summary>The setup of one of these drills: for the one that compares, with balls.</summary>
    public static SessionSetup SetupOf(DrillScript drill) =>
        drill.Blocks.Any(block => block.Order is Order.Compare) ? ComparisonPlay.Setup : Play.Setup;

    /// <summary>A drill and what somebody does with it: a kind of action, and two numbers that say which.</summary>
    public static Gen<(int Drill, (int What, int A, int B)[] Acts)> Any { get; } = Gen.Select(
        Gen.Int[0, Drills.Count - 1], Gen.Select(Gen.Int[0, 29], Gen.Int[0, 9], Gen.Int[-40, 40]).Array[5, 60]);

    /// <summary>The session after these acts; refused ones leave no trace.</summary>
    public static (SessionState State, List<LogEntry> Log) Run(SessionSetup setup, DrillScript drill, (int What, int A, int B)[] acts) =>
        Run(SessionCore.Open(setup, drill).State!, acts);

    public static (SessionState State, List<LogEntry> Log) Run(SessionState state, (int What, int A, int B)[] acts)
    {
        var log = new List<LogEntry>();
        var at = state.Setup.At;
        foreach (var act in acts.Prepend((What: 29, A: 0, B: 0)))
        {
            at += TimeSpan.FromSeconds(20);
            var input = InputOf(act, state, at);
            var step = SessionCore.Apply(state, input);
            state = step.State;
            if (step.Events.Count > 0)
            {
                log.Add(new LogEntry(log.Count + 1, input, step.Events));
            }
        }

        return (state, log);
    }

    private static SessionInput InputOf((int What, int A, int B) act, SessionState state, DateTimeOffset at)
    {
        var target = state.Shown is { } aim ? aim.Targets[act.A % aim.Targets.Count].Name : "a";
        return act.What switch
        {
            < 17 => new SessionInput.ShotThrown(at, ShotOf(state, act.A, act.B)),
            17 => new SessionInput.Pause(at),
            18 or 19 => new SessionInput.Resume(at),
            20 => new SessionInput.Skip(at, act.A > 7 ? Scope.Block : Scope.Aim),
            21 => new SessionInput.Repeat(at, act.A > 8 ? Scope.Block : Scope.Aim),
            22 => new SessionInput.VoidShot(at, 1 + act.A, "foul"),
            23 => new SessionInput.CorrectShot(at, 1 + act.A, ShotOf(state, act.A, act.B)),
            24 => new SessionInput.ChangeTarget(at, target, BoardOffset.FromBoards(2 + (act.A / 2.0)), null, null),
            25 => new SessionInput.ChangeTarget(at, target, null, Board.FromBoards(20 + (act.B / 2.0)), null),
            26 => new SessionInput.ChangeTarget(at, target, null, null, Feet.FromFeet(15 + act.A)),
            27 => new SessionInput.TakeNote(at, "note"),
            28 => act.A == 9 ? new SessionInput.End(at, "") : new SessionInput.ClockTick(at),
            _ => new SessionInput.Begin(at),
        };
    }

    /// <summary>Every target missed by B tenths; every tenth shot is not measured; the laydown moves with A.</summary>
    private static Shot ShotOf(SessionState state, int a, int b)
    {
        var shot = Play.ShotAt(state.Shown ?? new Aim("any", [new NamedTarget("any", new Target(Board.LaneCentre, BoardOffset.FromBoards(3), Feet.FromFeet(15)))]),
            a == 9 ? null : b / 10.0);
        return shot with { Laydown = Board.FromBoards(8 + a), Ball = a switch { 6 => "old one", 7 => "New One", 8 => "Unlisted", _ => null } };
    }
}
