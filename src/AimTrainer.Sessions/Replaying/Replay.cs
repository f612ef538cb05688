using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Runs a drill over recorded shots, without a store and without a clock: the time is what the shots say.</summary>
public static class Replay
{
    /// <summary>Runs to the end of the drill or of the shots.</summary>
    /// <param name="state">A session that waits, from <see cref="SessionCore.Open"/>.</param>
    /// <param name="items">The shots.</param>
    /// <param name="followed">Told of every input that led to something, and of what it led to, in order.</param>
    /// <param name="report">Told of everything that could not be read or was left out.</param>
    /// <param name="file">What the shots' file is called in what is reported.</param>
    public static ReplayOutcome Run(
        SessionState state, IEnumerable<FeedItem> items, Action<SessionInput, ValueList<SessionEvent>> followed, Action<FileProblem> report, string file = "shots")
    {
        state = state.ForShotsAlone();
        var seen = new DuplicateShots();
        var at = state.Setup.At;
        var repeated = 0;
        var afterTheEnd = 0;
        foreach (var item in items)
        {
            if (item is FeedItem.Unreadable unreadable)
            {
                report(unreadable.Problem);
                continue;
            }

            var read = (FeedItem.ShotRead)item;
            if (ShotOwner.WhyNotOf(state.Setup, read) is { } why)
            {
                report(new FileProblem(file, read.Line, "", why, "shots of the session's bowler and hand"));
            }
            else if (!seen.Add(read.Shot))
            {
                repeated++;
            }
            else if (state.Phase == SessionPhase.Ended)
            {
                afterTheEnd++;
            }
            else
            {
                at = read.Shot.Time ?? at;
                state = OnTime(Begun(state, at, followed), at, followed);
                if (state.Phase == SessionPhase.Ended)
                {
                    afterTheEnd++;
                }
                else
                {
                    state = Follow(state, new SessionInput.ShotThrown(at, read.Shot), followed);
                }
            }
        }

        state = Begun(state, at, followed);
        var complete = state.Phase == SessionPhase.Ended;
        if (!complete)
        {
            state = Follow(state, new SessionInput.End(at, "the shots ran out before the drill did"), followed);
        }

        return new ReplayOutcome(complete, state.LastNumber, repeated, afterTheEnd);
    }

    /// <summary>The session begins with its first shot, so that a block's minutes are minutes of throwing.</summary>
    private static SessionState Begun(SessionState state, DateTimeOffset at, Action<SessionInput, ValueList<SessionEvent>> followed) =>
        state.Phase == SessionPhase.Waiting ? Follow(state, new SessionInput.Begin(at), followed) : state;

    /// <summary>A block whose minutes were over before the shot ends before it, as it would have on a station.</summary>
    private static SessionState OnTime(SessionState state, DateTimeOffset at, Action<SessionInput, ValueList<SessionEvent>> followed) =>
        state.Drill.Blocks[state.BlockIndex!.Value].Until.Minutes is null ? state : Follow(state, new SessionInput.ClockTick(at), followed);

    private static SessionState Follow(SessionState state, SessionInput input, Action<SessionInput, ValueList<SessionEvent>> followed)
    {
        var step = SessionCore.Apply(state, input);
        if (step.Events.Count > 0)
        {
            followed(input, step.Events);
        }

        return step.State;
    }
}
