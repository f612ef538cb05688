using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>
/// Which sounds a step of a session makes. Pure. Of a shot only what the bowler is told is heard: a cue for a band only where the
/// miss is told in boards, a side only where the side is told, a change of width only together with the shot that brought it about.
/// </summary>
public static class CueBook
{
    /// <summary>What is heard between two pictures of a station: nothing when a session was opened or gone on with, or when the second is no newer.</summary>
    public static CuePlan Between(SessionSnapshot before, SessionSnapshot after) =>
        after.Setup is { } setup && before.Setup?.SessionId == setup.SessionId && after.Version > before.Version
            ? For(after.Happened, setup.Hand, before.Block?.Bands ?? GradeBands.Default)
            : CuePlan.Nothing;

    /// <summary>What is heard of one step.</summary>
    /// <param name="events">What happened.</param>
    /// <param name="hand">The bowler's hand, from which left and right are worked out.</param>
    /// <param name="bands">The bands of the block that was thrown.</param>
    public static CuePlan For(ValueList<SessionEvent> events, Hand hand, GradeBands bands)
    {
        var cues = new List<Cue>();
        string? words = null;
        var blockOver = events.AsEnumerable().Any(happened => happened is SessionEvent.BlockEnded);
        var sessionOver = events.AsEnumerable().Any(happened => happened is SessionEvent.SessionEnded);
        foreach (var happened in events)
        {
            switch (happened)
            {
                case SessionEvent.ShotGraded graded:
                    AddShot(cues, graded, hand, bands, blockOver);
                    words = SpokenWords.For(graded.Told, hand) ?? words;
                    break;
                case SessionEvent.ShotSetAside:
                    cues.Add(Cue.SetAside);
                    break;
                case SessionEvent.TargetChanged changed:
                    AddWidths(cues, changed.After.Width < changed.Before.Width, changed.After.Width > changed.Before.Width);
                    break;
                case SessionEvent.BlockEnded ended:
                    AddRow(cues, ended.Told ?? Told.Nothing, hand);
                    words = SpokenWords.For(ended.Told ?? Told.Nothing, hand) ?? words;
                    if (!sessionOver && ended.Why != BlockEndReason.Repeated)
                    {
                        cues.Add(Cue.BlockEnd);
                    }

                    break;
                case SessionEvent.SessionEnded:
                    cues.Add(Cue.SessionEnd);
                    break;
                default:
                    break;
            }
        }

        return cues.Count == 0 && words is null ? CuePlan.Nothing : new CuePlan(cues.ToValueList(), words);
    }

    private static void AddShot(List<Cue> cues, SessionEvent.ShotGraded graded, Hand hand, GradeBands bands, bool blockOver)
    {
        if (graded.Told.Results.Count != 1 || graded.Told.Results[0].Number != graded.Shot.Number)
        {
            AddRow(cues, graded.Told, hand);
            return;
        }

        AddResult(cues, graded.Told.Results[0], graded.Shot, hand, bands);
        if (blockOver)
        {
            // The width it would have had from now on is never thrown at.
            return;
        }

        var (narrower, wider) = (false, false);
        for (var i = 0; i < graded.NextWidths.Count; i++)
        {
            narrower |= graded.NextWidths[i].Width < graded.Shot.Targets[i].Target.Width;
            wider |= graded.NextWidths[i].Width > graded.Shot.Targets[i].Target.Width;
        }

        AddWidths(cues, narrower, wider);
    }

    private static void AddResult(List<Cue> cues, ToldShot told, GradedShot shot, Hand hand, GradeBands bands)
    {
        switch (told.Held)
        {
            case null:
                cues.Add(Cue.Unmeasured);
                break;
            case true:
                cues.Add(HitCue(told, shot, bands));
                break;
            case false:
                AddMisses(cues, told, shot, hand);
                break;
        }
    }

    /// <summary>The band is heard only where the miss is told in boards, for then it is known; of a line its poorest target.</summary>
    private static Cue HitCue(ToldShot told, GradedShot shot, GradeBands bands)
    {
        var holding = bands.Bands.AsEnumerable().Where(band => band.Award.Holds).Select(band => band.Award).ToList();
        if (holding.Count < 2 || told.Targets.Count == 0 || told.Targets.AsEnumerable().Any(target => target.Miss is null))
        {
            return Cue.Hit;
        }

        var poorest = shot.Targets.AsEnumerable().Max(result => result.Grade is { } grade ? holding.IndexOf(grade) : -1);
        return poorest == 0 ? Cue.HitBest : poorest == holding.Count - 1 && holding.Count > 2 ? Cue.HitJust : Cue.Hit;
    }

    private static void AddMisses(List<Cue> cues, ToldShot told, GradedShot shot, Hand hand)
    {
        var before = cues.Count;
        foreach (var target in told.Targets)
        {
            var grade = target.Miss is null ? null : shot.Targets.AsEnumerable().First(result => result.Name == target.Name).Grade;
            if (target.Side is { } side and not 0 && grade is not { Holds: true })
            {
                var close = grade is not null && grade != GradeBands.Miss;
                cues.Add(IsLeft(side, hand) ? (close ? Cue.CloseLeft : Cue.MissLeft) : close ? Cue.CloseRight : Cue.MissRight);
            }
        }

        if (cues.Count == before)
        {
            cues.Add(Cue.Missed);
        }
    }

    /// <summary>Several shots told together: one short note each, oldest first; the newest when they are too many for one plan.</summary>
    private static void AddRow(List<Cue> cues, Told told, Hand hand)
    {
        // Room is kept for the end of the block.
        const int MostInARow = CuePlan.Longest - 2;
        for (var i = Math.Max(0, told.Results.Count - MostInARow); i < told.Results.Count; i++)
        {
            var shot = told.Results[i];
            var side = shot.Targets.Count == 1 ? shot.Targets[0].Side : null;
            cues.Add(shot.Held switch
            {
                null => Cue.ToldUnmeasured,
                true => Cue.ToldHit,
                false when side is { } known and not 0 => IsLeft(known, hand) ? Cue.ToldLeft : Cue.ToldRight,
                false => Cue.ToldMissed,
            });
        }
    }

    private static void AddWidths(List<Cue> cues, bool narrower, bool wider)
    {
        if (narrower)
        {
            cues.Add(Cue.Narrower);
        }

        if (wider)
        {
            cues.Add(Cue.Wider);
        }
    }

    /// <summary>Inside, toward higher boards, is the left of a right-hander and the right of a left-hander.</summary>
    private static bool IsLeft(int side, Hand hand) => side > 0 == (hand == Hand.Right);
}
