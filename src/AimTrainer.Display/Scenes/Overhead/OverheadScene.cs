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
        RateGroup.Add(ink, layout.Rate, snapshot);
        Surround.Add(ink, layout, snapshot);
    }

    /// <summary>Between sessions: the lane with its arrows lit, its number, and what happens here.</summary>
    private static void Attract(ScreenInk ink, OverheadLayout layout, int station)
    {
        LanePanel.Wood(ink, layout.Lane(LaneProfileReader.Default, Hand.Right), ink.Palette.Target);
        layout.Aim.Ground(ink);
        layout.Aim.Main(ink, 0, ink.Palette.Text, $"Lane {SceneWords.Whole(station)}", SceneWords.Whole(station));
        layout.Aim.Below(ink, "ready for a session", "ready");
        layout.Lower.Ground(ink);
        layout.Lower.Words(ink, "Aim. Throw. See.", "A target on the lane, and after each shot where the ball crossed it.", "Ask at the desk to begin.");
    }
}
