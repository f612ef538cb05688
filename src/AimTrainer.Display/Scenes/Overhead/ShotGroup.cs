using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>What came of the last shot, as far as it was told, and the last ten.</summary>
internal static class ShotGroup
{
    private const double SignRadius = 0.04, SignRoom = 0.105, ArrowRoom = 0.062, TenFromBottom = 0.036;

    public static void Add(ScreenInk ink, FigurePanel panel, OverheadSceneInput input, LastShot? last)
    {
        panel.Ground(ink);
        var snapshot = input.Snapshot;
        var hand = snapshot.Setup!.Hand;
        var number = last is null ? "" : SceneWords.Whole(last.Number);
        switch (last)
        {
            case null:
                NoShot(ink, panel, snapshot);
                break;
            case { State: LastShotState.Void }:
                panel.Words(ink, $"Shot {number} is void", "it does not count, but stays in the record");
                break;
            case { State: LastShotState.Withheld }:
                panel.Words(ink, $"Shot {number} is in", FeedbackOf(snapshot) is { } feedback ? $"result withheld {SceneWords.WithheldUntil(feedback)}" : "result withheld");
                break;
            case { Told: { } told } when !input.ResultIsFresh:
                panel.Words(ink, $"Shot {SceneWords.Whole(told.Number)} is in");
                break;
            case { Told: { } told }:
                Told(ink, panel, told, last, hand);
                break;
            default:
                break;
        }

        if (snapshot.Block is { } now)
        {
            Ten(ink, panel, snapshot, now);
        }
    }

    private static Feedback? FeedbackOf(SessionSnapshot snapshot) => (snapshot.Block ?? snapshot.Finished?.Block)?.Feedback;

    private static void NoShot(ScreenInk ink, FigurePanel panel, SessionSnapshot snapshot)
    {
        if (snapshot.Block is { } block)
        {
            panel.Words(ink, snapshot.Finished is { } over ? $"Block {SceneWords.Whole(over.Number)} is over" : "No shot yet", $"now: {block.Name}");
        }
        else
        {
            panel.Words(ink, "No shot");
        }
    }

    private static void Told(ScreenInk ink, FigurePanel panel, ToldShot told, LastShot last, Hand hand)
    {
        var number = SceneWords.Whole(told.Number);
        if (told.Held is null && told.Targets.Count <= 1)
        {
            ink.Sign(null, panel.InnerLeft + SignRadius, panel.MainBaseline - (ScreenInk.Main / 2), SignRadius);
            panel.Main(ink, SignRoom, ink.Palette.Text, "?");
            panel.Below(ink, $"shot {number} was not measured", "not measured");
            return;
        }

        ink.Sign(told.Held, panel.InnerLeft + SignRadius + 0.006, panel.MainBaseline - (ScreenInk.Main / 2), SignRadius);
        var held = told.Held switch { true => "hit", false => "miss", null => "?" };
        if (told.Targets is [var only] && last.Shot is not { Targets.Count: > 1 })
        {
            Single(ink, panel, only, held, number, hand);
            return;
        }

        panel.Main(ink, SignRoom, ink.Palette.Text, held);
        var words = ToldWords.Short(told, hand);
        var parts = words.IndexOf(", ", StringComparison.Ordinal) is var comma and > 0 ? words[(comma + 2)..] : "";
        if (parts.Length > 0)
        {
            panel.Below(ink, $"shot {number}: {parts}", parts);
        }
        else
        {
            panel.Below(ink, $"shot {number}");
        }
    }

    private static void Single(ScreenInk ink, FigurePanel panel, ToldTarget told, string held, string number, Hand hand)
    {
        switch (told)
        {
            case { Miss: { } miss } when SceneWords.IsOnCentre(miss):
                panel.Main(ink, SignRoom, ink.Palette.Text, "0.00");
                panel.Below(ink, $"on centre, a {held}, shot {number}", $"on centre, a {held}", "on centre");
                break;
            case { Miss: { } miss }:
                var side = SceneWords.Side(Math.Sign(miss.Boards), hand);
                Beside(ink, panel, SceneWords.TwoPlaces(miss), SceneWords.OnePlace(miss), side);
                panel.Below(ink, $"boards {side}, a {held}, shot {number}", $"boards {side}, a {held}", $"boards {side}");
                break;
            case { Side: 0 }:
                panel.Main(ink, SignRoom, ink.Palette.Text, held);
                panel.Below(ink, $"on centre, shot {number}", "on centre");
                break;
            case { Side: { } way }:
                Beside(ink, panel, held, held, SceneWords.Side(way, hand));
                panel.Below(ink, $"{SceneWords.Side(way, hand)} of centre, shot {number}", $"{SceneWords.Side(way, hand)} of centre");
                break;
            default:
                panel.Main(ink, SignRoom, ink.Palette.Text, held);
                panel.Below(ink, $"shot {number}");
                break;
        }
    }

    /// <summary>A figure with an arrow on the side to which the ball missed.</summary>
    private static void Beside(ScreenInk ink, FigurePanel panel, string figure, string shorter, string side)
    {
        var left = side == "left";
        var text = TextFit.First(panel.Room - SignRoom - ArrowRoom, ScreenInk.Main, true, figure, shorter);
        var x = panel.InnerLeft + SignRoom + (left ? ArrowRoom : 0);
        ink.Write(text, x, panel.MainBaseline, ScreenInk.Main, ink.Palette.Text, bold: true);
        var end = x + TextRuler.Width(text, ScreenInk.Main, true);
        var (tip, foot) = left ? (x - ArrowRoom + 0.008, x - 0.014) : (end + ArrowRoom, end + 0.014);
        var y = panel.MainBaseline - (ScreenInk.Main / 2);
        ink.Polygon(ink.Palette.Text, (tip, y), (foot, y - 0.04), (foot, y + 0.04));
    }

    /// <summary>
    /// The last ten, when each was told as it was thrown: about the target's middle where crossings are told, else one sign after the
    /// other, the newest on the right.
    /// </summary>
    private static void Ten(ScreenInk ink, FigurePanel panel, SessionSnapshot snapshot, DrillBlock block)
    {
        var shots = snapshot.LastShots.AsEnumerable().Where(shot => shot.VoidReason is null).ToList();
        if (shots.Count == 0 || !TellsAll.Holds(block.Feedback))
        {
            return;
        }

        var y = panel.Bottom - TenFromBottom;
        if (TellsAll.Crossings(block.Feedback) && snapshot.Shown is { IsLine: false } shown)
        {
            Spread(ink, panel, shots, shown.Targets[0].Target, snapshot.Setup!.Hand, y);
            return;
        }

        var pitch = panel.Room / 10;
        for (var i = 0; i < shots.Count; i++)
        {
            ink.Sign(shots[i].Held, panel.Right - FigurePanel.Padding - (pitch * (i + 0.5)), y, 0.018, LanePanel.Fade(i));
        }
    }

    /// <summary>Enlarged: the target with some boards on either side, and how far from its own target's middle each shot crossed.</summary>
    private static void Spread(ScreenInk ink, FigurePanel panel, List<GradedShot> shots, Target target, Hand hand, double y)
    {
        const double Half = 0.026;
        var reach = Math.Max(6, (target.Width.Boards / 2) + 3);
        var board = panel.Room / (2 * reach);
        var middle = panel.InnerLeft + (panel.Room / 2);
        var inside = hand == Hand.Right ? -board : board;
        ink.Box(panel.InnerLeft, y - Half, panel.InnerLeft + panel.Room, y + Half, ink.Palette.Lane);
        for (var step = 1; step < reach; step++)
        {
            foreach (var x in new[] { middle - (board * (step - 0.5)), middle + (board * (step - 0.5)) })
            {
                ink.Add(new Shape<ScreenPoint>.Stroke([new ScreenPoint(x, y - Half), new ScreenPoint(x, y + Half)], 0.0015, ink.Palette.Boards));
            }
        }

        var half = target.Width.Boards / 2 * board;
        ink.Box(middle - half, y - Half, middle + half, y - Half + 0.008, ink.Palette.Target);
        ink.Box(middle - half, y + Half - 0.008, middle + half, y + Half, ink.Palette.Target);
        for (var i = shots.Count - 1; i >= 0; i--)
        {
            if (shots[i].Targets[0] is { Miss: { } miss, Grade: { } grade })
            {
                var x = middle + (Math.Clamp(miss.Boards, -reach + 0.5, reach - 0.5) * inside);
                ink.Sign(grade.Holds, x, y, i == 0 ? 0.015 : 0.01, LanePanel.Fade(i));
            }
        }
    }
}
