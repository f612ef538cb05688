using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// What the screen above the lane shows. Pure: the same input gives the same scene. Of shots no more is shown than the bowler was
/// told. Made to be read from 20 m: main figures are an eighth of the picture high, the smallest words a twentieth.
/// </summary>
public static class OverheadScene
{
    /// <summary>The scene of one moment.</summary>
    public static Scene<ScreenPoint> Build(OverheadSceneInput input)
    {
        var snapshot = input.Snapshot;
        var ink = new ScreenInk(input.Theme.Screen, input.Aspect);
        var layout = new OverheadLayout(input.Aspect);
        switch (snapshot.Phase)
        {
            case null:
                Attract(ink, layout, snapshot.Station);
                break;
            case SessionPhase.Waiting:
                CautionCard.Add(ink, layout, snapshot);
                break;
            default:
                Session(ink, layout, input);
                break;
        }

        return ink.Scene();
    }

    private static void Session(ScreenInk ink, OverheadLayout layout, OverheadSceneInput input)
    {
        var snapshot = input.Snapshot;
        var throwing = snapshot.Phase == SessionPhase.Throwing;
        var last = LastShot.Of(snapshot);
        var lane = layout.Lane(snapshot.Setup!.Lane, snapshot.Setup.Hand);
        LanePanel.Wood(ink, lane, ink.Palette.Mark);
        if (throwing)
        {
            LanePanel.Targets(ink, lane, snapshot.Shown, snapshot.Block is { ShowsNext: true } ? snapshot.Next : null, layout.Middle);
        }

        if (!input.Cleared)
        {
            LanePanel.Balls(ink, lane, snapshot);
        }

        LanePanel.Shots(ink, lane, snapshot, input.ResultIsFresh ? last : null);
        if (throwing && snapshot.Shown is { } shown)
        {
            AimGroup.Add(ink, layout.Aim, shown);
        }
        else
        {
            layout.Aim.Ground(ink);
            layout.Aim.Main(ink, 0, ink.Palette.Text, snapshot.Phase == SessionPhase.Paused ? "Paused" : "Done");
            if (snapshot.Phase == SessionPhase.Paused)
            {
                layout.Aim.Below(ink, "shots do not count now", "shots do not count", "no shot counts");
            }
            else
            {
                layout.Aim.Below(ink, snapshot.Drill!.Name);
            }
        }

        ShotGroup.Add(ink, layout.Shot, input, last);
        if (snapshot.Turn is { } turn)
        {
            BallGroup.Add(ink, layout.Rate, snapshot, turn);
        }
        else
        {
            RateGroup.Add(ink, layout.Rate, snapshot);
        }

        Surround.Add(ink, layout, snapshot);
    }

    /// <summary>Between sessions: the lane with its arrows lit, its number, and what happens here.</summary>
    private static void Attract(ScreenInk ink, OverheadLayout layout, int station)
    {
        LanePanel.Wood(ink, layout.Lane(LaneProfileReader.Default, Hand.Right), ink.Palette.Target);
        layout.Aim.Ground(ink);
        layout.Aim.Main(ink, 0, ink.Palette.Text, $"Lane {SceneWords.Whole(station)}", SceneWords.Whole(station));
        layout.Aim.Below(ink, "ready for a session", "ready");
        AttractWords(ink, layout.Lower);
    }

    private static void AttractWords(ScreenInk ink, FigurePanel panel)
    {
        const double Size = 0.09, Pitch = 0.138, Icon = 0.04, Indent = 0.13;
        panel.Ground(ink);
        var baseline = panel.Top + 0.03 + Size;
        var x = panel.InnerLeft + Icon + 0.01;
        ink.Box(x - (0.8 * Icon), baseline - Size, x + (0.8 * Icon), baseline, ink.Palette.Target);
        ink.Write("Aim.", panel.InnerLeft + Indent, baseline, Size, ink.Palette.Text, bold: true);
        baseline += Pitch;
        ink.Add(new Shape<ScreenPoint>.Stroke(
            [
                new(x - (0.3 * Icon), baseline), new(x + (0.3 * Icon), baseline - (0.3 * Size)), new(x + (0.5 * Icon), baseline - (0.5 * Size)),
                new(x + (0.4 * Icon), baseline - (0.7 * Size)), new(x - (0.1 * Icon), baseline - Size),
            ],
            0.01, ink.Palette.Trail));
        ink.Write("Throw.", panel.InnerLeft + Indent, baseline, Size, ink.Palette.Text, bold: true);
        baseline += Pitch;
        ink.Sign(true, x, baseline - (Size / 2), Icon);
        ink.Write("See.", panel.InnerLeft + Indent, baseline, Size, ink.Palette.Text, bold: true);
        ink.Write(
            TextFit.First(panel.Room, ScreenInk.Small, false, "Ask at the desk for a session.", "Ask at the desk."),
            panel.InnerLeft, panel.Bottom - 0.032, ScreenInk.Small, ink.Palette.Quiet);
    }
}
