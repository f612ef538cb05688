using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display.Tests;

/// <summary>Every state that displays know, in invented sessions.</summary>
internal static class SceneStates
{
    private static string Arrow => ScenePlay.Block(ScenePlay.Target("second arrow", 10, 15, 3));

    private static string TwoArrows => ScenePlay.Block(
        $"{ScenePlay.Target("second arrow", 10, 15, 3)}, {ScenePlay.Target("third arrow", 15, 15, 4)}", """ "showsNext": true, "until": { "shots": 20 } """);

    private static string Line => ScenePlay.Block(ScenePlay.Line(ScenePlay.Target("arrows", 15, 15, 3), ScenePlay.Target("downlane", 8, 40, 5)));

    private static string Walk => ScenePlay.Block(
        ScenePlay.Line(ScenePlay.Target("arrows", 10, 15, 3), ScenePlay.Target("downlane", 7, 40, 5, """, "walkRatio": 0.5""")),
        """ "showsNext": true """,
        """{ "kind": "walk", "to": { "board": 20 }, "moveBoards": 2, "everyShots": 1 }""");

    private const string Caution = "Keep the approach dry; test the slide; wipe the ball before every throw; rest between games.";

    private static readonly double[] TenMisses = [0.4, -1.2, 2.1, 0.05, -0.6, 3.4, 1.1, -2.6, 0.9, 0.3];

    private static readonly IReadOnlyList<SceneState> Every = Made();

    public static IReadOnlyList<SceneState> All() => Every;

    private static IReadOnlyList<SceneState> Made() =>
    [
        new("idle", SessionSnapshot.Idle(7)),
        new("caution", ScenePlay.Waiting(ScenePlay.Drill([Arrow])).Snapshot),
        new("caution-long", ScenePlay.Waiting(ScenePlay.Drill(
            [Arrow], "A drill with a title as long as eighty", string.Join(", ", Enumerable.Repeat($"\"{Caution}\"", 4)))).Snapshot),
        new("target", ScenePlay.Begun(Arrow).Snapshot),
        new("target-left-hand", ScenePlay.Begun(Hand.Left, Arrow).Snapshot),
        new("target-one-board-far", ScenePlay.Begun(ScenePlay.Block(ScenePlay.Target("finish", 6.5, 45.5, 1))).Snapshot),
        new("target-wide", ScenePlay.Begun(ScenePlay.Block(ScenePlay.Target("warm-up", 20, 15, 20))).Snapshot),
        new("next", ScenePlay.Begun(TwoArrows).Snapshot),
        new("line", ScenePlay.Begun(Line).Snapshot),
        new("line-of-three", ScenePlay.Begun(ScenePlay.Block(ScenePlay.Line(
            ScenePlay.Target("dots", 20.5, 7, 2), ScenePlay.Target("arrows", 17.25, 15, 3), ScenePlay.Target("downlane", 8.5, 40, 5)))).Snapshot),
        new("walk-with-next", ScenePlay.Begun(Walk).ThrowAt(true, 0.5, -1.0).Snapshot, 60),
        new("hit", ScenePlay.Begun(Arrow).Throw(0.4).Snapshot),
        new("on-centre", ScenePlay.Begun(Arrow).Throw(0.0).Snapshot),
        new("miss-inside", ScenePlay.Begun(Arrow).Throw(2.35).Snapshot),
        new("miss-outside", ScenePlay.Begun(Arrow).Throw(-2.35).Snapshot),
        new("miss-inside-left-hand", ScenePlay.Begun(Hand.Left, Arrow).Throw(2.35).Snapshot),
        new("miss-outside-left-hand", ScenePlay.Begun(Hand.Left, Arrow).Throw(-2.35).Snapshot),
        new("miss-wide", ScenePlay.Begun(Arrow).Throw(-12.35).Snapshot),
        new("ten-shots", ScenePlay.Begun(Arrow).Throw(TenMisses).Snapshot),
        new("shot-in-target-moves-on", ScenePlay.Begun(TwoArrows).Throw(0.4, -1.2, 2.1).Snapshot),
        new("line-held", ScenePlay.Begun(Line).ThrowAt(true, 0.5, -1.0).Snapshot),
        new("line-missed", ScenePlay.Begun(Line).ThrowAt(true, 0.5, -1.0).ThrowAt(true, 0.5, -4.25).Snapshot),
        new("line-half-measured", ScenePlay.Begun(Line).ThrowAt(false, 0.5, null).Snapshot),
        new("not-measured", ScenePlay.Begun(Arrow).ThrowAt(true, [null]).Snapshot),
        new("says-side", Says("side").Throw(1.0, -2.0).Snapshot),
        new("says-hit", Says("hit").Throw(0.4, -2.0).Snapshot),
        new("says-hit-held", Says("hit").Throw(-2.0, 0.4).Snapshot),
        new("outside-told", Outside().Throw(0.4, -2.0).Snapshot),
        new("outside-held", Outside().Throw(-2.0, 0.4).Snapshot),
        new("withheld-summary", Summary().Throw(0.4, 2.0).Snapshot),
        new("summary-told", Summary().Throw(0.4, 2.0, -0.5).Snapshot),
        new("withheld-fading", Fading().Throw(0.4, 2.0, -0.5).Snapshot),
        new("withheld-none", None().Throw(0.4, 2.0).Snapshot),
        new("void", ScenePlay.Begun(Arrow).Throw(0.4, 2.0).Do(at => new SessionInput.VoidShot(at, 2, "foul")).Snapshot),
        new("result-cleared", ScenePlay.Begun(Arrow).Throw(0.4).Snapshot, Cleared: true),
        new("result-timed-out", ScenePlay.Begun(Arrow).Throw(0.4).Snapshot, 30),
        new("paused", ScenePlay.Begun(Arrow).Throw(0.4, 2.0).Do(at => new SessionInput.Pause(at)).Snapshot),
        new("block-end", TwoBlocks("").Throw(0.4, 2.0).Snapshot),
        new("block-end-withheld", TwoBlocks(""" "feedback": { "when": "none" }, """).Throw(0.4, 2.0).Snapshot),
        new("session-end", ScenePlay.Begun(ScenePlay.Block(ScenePlay.Target("spot", 10, 15, 3), """ "until": { "shots": 3 } """)).Throw(0.4, 2.0, -0.5).Snapshot),
        new("session-end-withheld", ScenePlay.Begun(ScenePlay.Block(
            ScenePlay.Target("spot", 10, 15, 3), """ "feedback": { "when": "none" }, "until": { "shots": 2 } """)).Throw(0.4, 2.0).Snapshot),
        new("long-names", LongNames().Throw(0.4, -11.85).Snapshot),
        new("simulated", ScenePlay.Waiting(ScenePlay.Drill([Arrow]), simulated: true).Do(at => new SessionInput.Begin(at)).Throw(0.4).Snapshot),
        new("compare-start", Compared().Snapshot),
        new("compare-both", Compared().ThrowAt(true, 0.5, -1.0).ThrowAt(true, -0.3, 2.25).Snapshot),
        new("compare-check", Compared().ThrowAt(true, 0.5, -1.0).ThrowAt(true, -0.3, 2.25).ThrowAt(true, 0.25, -0.5).Snapshot, 60),
        new("compare-other-ball", Compared().ThrowAt(true, 0.5, -1.0).ThrowWith("Old one", true, 0.25, -0.5).Snapshot),
        new("compare-cleared", Compared().ThrowAt(true, 0.5, -1.0).ThrowAt(true, -0.3, 2.25).Snapshot, Cleared: true),
        new("compare-left-hand", Compared(Hand.Left).ThrowAt(true, 0.5, -1.0).ThrowAt(true, -0.3, 2.25).Snapshot),
        new("compare-withheld", Compared(feedback: """, "feedback": { "when": "none" }""").ThrowAt(true, 0.5, -1.0).Snapshot),
        new("compare-three", Compared(balls: """ "reference", "second", "third" """, chosen:
            [new ChosenBall("reference", "Old one"), new ChosenBall("second", "A ball whose name goes on and on"), new ChosenBall("third", "Green")])
            .ThrowAt(true, 0.5, -1.0).ThrowAt(true, -0.3, 2.25).ThrowAt(true, 0.1, 4.0).Snapshot),
        new("compare-end", Compared(order: """ "goodThrowsEach": 1 """).ThrowAt(true, 0.5, -1.0).ThrowAt(true, -0.3, 2.25).Snapshot),
    ];

    /// <summary>A comparison of two balls on one line.</summary>
    public static ScenePlay Compared(
        Hand hand = Hand.Right, string feedback = "", string balls = """ "reference", "other" """,
        string order = """ "goodThrowsEach": 3, "checkEvery": 4 """, ValueList<ChosenBall>? chosen = null)
    {
        var line = ScenePlay.Line(ScenePlay.Target("arrows", 10, 15, 3), ScenePlay.Target("breakpoint", 6, 42, 5));
        return ScenePlay.Waiting(
            ScenePlay.Drill([$$"""
                { "name": "Two balls", "kind": "comparison", "aims": [{{line}}],
                  "order": { "kind": "compare", "balls": [{{balls}}], "throwing": "alternate", {{order}} }{{feedback}} }
                """]),
            hand,
            balls: chosen ?? [new ChosenBall("reference", "Old one"), new ChosenBall("other", "New one")]).Do(at => new SessionInput.Begin(at));
    }

    private static ScenePlay Fed(string feedback) =>
        ScenePlay.Begun(ScenePlay.Block(ScenePlay.Target("second arrow", 10, 15, 3), $$""" "feedback": {{feedback}}, "until": { "shots": 20 } """));

    private static ScenePlay Says(string says) => Fed($$"""{ "when": "every", "says": "{{says}}" }""");

    private static ScenePlay Outside() => Fed("""{ "when": "outside" }""");

    private static ScenePlay Summary() => Fed("""{ "when": "summary", "everyShots": 3 }""");

    private static ScenePlay Fading() => Fed("""{ "when": "fading", "firstShare": 0.5, "lastShare": 0 }""");

    private static ScenePlay None() => Fed("""{ "when": "none" }""");

    private static ScenePlay TwoBlocks(string feedback) => ScenePlay.Begun(
        ScenePlay.Block(ScenePlay.Target("spot", 10, 15, 3), $$"""{{feedback}} "until": { "shots": 2 } """, name: "Warm-up"),
        ScenePlay.Block(ScenePlay.Target("spot", 12, 15, 2), """ "until": { "shots": 5 } """, name: "Third block of boards twelve, narrow"));

    private static ScenePlay LongNames() => ScenePlay.Waiting(
        ScenePlay.Drill(
            [ScenePlay.Block(
                ScenePlay.Target("a target whose name takes forty letters", 12.25, 41.5, 3.75),
                """ "until": { "shots": 1000 } """,
                name: "A block with a name that goes on and on and on and on")],
            "A drill whose title is far too long for any screen that hangs above a lane"),
        Hand.Right,
        "Wwwwwwwwww Mmmmmmmmmmmmm Wwwwwwwwwwwwwww",
        128).Do(at => new SessionInput.Begin(at));
}
