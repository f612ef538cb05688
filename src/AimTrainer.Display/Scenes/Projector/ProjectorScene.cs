using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>
/// What a projector draws on the lane. Pure: the same input gives the same scene. The target is built from the very value that the
/// next shot is graded against; of the last shot no more is shown than the bowler was told.
/// </summary>
public static class ProjectorScene
{
    /// <summary>The scene of one moment.</summary>
    public static Scene<LanePoint> Build(ProjectorSceneInput input)
    {
        var snapshot = input.Snapshot;
        var ink = new LaneInk(snapshot.Setup?.Lane ?? LaneProfileReader.Default, snapshot.Setup?.Hand ?? Hand.Right, input.View, input.Theme.Lane);
        switch (snapshot.Phase)
        {
            case null:
                Attract(ink, snapshot.Station);
                break;
            case SessionPhase.Waiting:
                LaneWords.Block(
                    ink,
                    ["Before you throw", "Stay behind the foul line:", "the lane is slippery.", "Do not look into the beam.", "Hand, wrist or arm sore?", "Say so first."],
                    title: true);
                break;
            case SessionPhase.Paused:
                LaneWords.Block(ink, ["Paused", "Shots do not count now."], title: true);
                break;
            case SessionPhase.Ended:
                Result(ink, input);
                LaneWords.Block(ink, ["Session over"], title: true);
                break;
            default:
                Throwing(ink, input);
                break;
        }

        return ink.Scene();
    }

    private static void Throwing(LaneInk ink, ProjectorSceneInput input)
    {
        var snapshot = input.Snapshot;
        if (snapshot.Shown is not { } shown)
        {
            return;
        }

        if (snapshot is { Block.ShowsNext: true, Next: { } next })
        {
            foreach (var target in next.Targets)
            {
                if (shown.Targets.AsEnumerable().All(now => now.Target != target.Target))
                {
                    ProjectorTarget.Outline(ink, target.Target, ink.Palette.Next);
                }
            }
        }

        ProjectorPath.Add(ink, shown);
        foreach (var target in shown.Targets)
        {
            ProjectorTarget.Current(ink, target.Target);
        }

        if (!input.Cleared && input.ShowsTrail)
        {
            ProjectorBalls.Ways(ink, snapshot);
        }

        Result(ink, input);
        if (snapshot.Turn is { } turn)
        {
            ProjectorBalls.Next(ink, snapshot, turn, beside: input.ResultIsFresh && LastShot.Of(snapshot) is { State: LastShotState.Told });
        }
    }

    private static void Result(LaneInk ink, ProjectorSceneInput input)
    {
        if (!input.ResultIsFresh)
        {
            return;
        }

        var snapshot = input.Snapshot;
        var last = LastShot.Of(snapshot);
        switch (last)
        {
            case { State: LastShotState.Void }:
                LaneWords.Block(ink, [$"Shot {SceneWords.Whole(last.Number)}", "does not count"], title: false);
                break;
            case { State: LastShotState.Withheld }:
                LaneWords.Block(ink, [$"Shot {SceneWords.Whole(last.Number)} is in", .. WithheldLines(FeedbackOf(snapshot))], title: false);
                break;
            case { Shot: not null }:
                ProjectorResult.Add(ink, last, snapshot.Phase == SessionPhase.Ended ? null : snapshot.Shown, input.ShowsTrail && snapshot.Phase != SessionPhase.Ended && snapshot.Turn is null);
                break;
            default:
                break;
        }

        if (snapshot is { Phase: SessionPhase.Throwing, Throws: 0, Finished: { } finished })
        {
            LaneWords.Block(ink, BlockOver(ink, finished, last), title: false);
        }
    }

    /// <summary>The last shot of a block that is over has no place on the lane any more: what was told of it is said in words.</summary>
    private static List<string> BlockOver(LaneInk ink, FinishedBlock finished, LastShot? last)
    {
        List<string> lines = [$"Block {SceneWords.Whole(finished.Number)} is over"];
        if (last is { Told: { } told, Shot: null })
        {
            lines.Add($"Shot {SceneWords.Whole(last.Number)}: {ToldWords.Short(told, ink.Hand)}");
        }

        return lines;
    }

    private static List<string> WithheldLines(Feedback? feedback) =>
        feedback is null ? ["result withheld"] : ["result withheld", SceneWords.WithheldUntil(feedback)];

    private static Feedback? FeedbackOf(SessionSnapshot snapshot) => (snapshot.Block ?? snapshot.Finished?.Block)?.Feedback;

    /// <summary>No session: the lane's own arrows glow, and the lane says its number.</summary>
    private static void Attract(LaneInk ink, int station)
    {
        foreach (var arrow in ink.Lane.Markers.AsEnumerable().Where(marker => marker.Kind == MarkerKind.Arrow))
        {
            var at = ink.Lane.PointOf(arrow.FromRight, arrow.Distance, Hand.Right);
            var half = ink.HalfLength(Inches.FromInches(1.4), arrow.Distance);
            ink.Add(new Shape<LanePoint>.Polygon(
                [LaneInk.Moved(at, -1.1, -half), LaneInk.Moved(at, 1.1, -half), LaneInk.Moved(at, 0, half)], ink.Palette.Path));
            ink.Take(arrow.Distance.Value - (half / 12), arrow.Distance.Value + (half / 12), at.Across.Value - 1.1, at.Across.Value + 1.1);
        }

        LaneWords.Block(ink, [$"Lane {SceneWords.Whole(station)}", "ready for a session"], title: true);
    }
}
