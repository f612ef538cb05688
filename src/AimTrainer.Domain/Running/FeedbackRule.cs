namespace AimTrainer.Domain;

/// <summary>What the bowler is told after a shot.</summary>
internal static class FeedbackRule
{
    /// <summary>What is told now.</summary>
    /// <param name="feedback">The block's rule.</param>
    /// <param name="shot">The shot just graded.</param>
    /// <param name="throws">Throws of the run that count, this one included.</param>
    /// <param name="past">The session's past, this shot included.</param>
    /// <param name="toldUpTo">Number of the last shot that a summary told; shots that wait are newer.</param>
    /// <param name="blockEnds">Whether the block ends with this shot, so that a summary cannot wait.</param>
    public static Told After(Feedback feedback, GradedShot shot, int throws, History? past, int toldUpTo, bool blockEnds)
    {
        switch (feedback.When)
        {
            case FeedbackWhen.Every:
                return new Told([Of(shot, feedback.Says)]);
            case FeedbackWhen.Fading fading:
                return IsTold(fading, throws) ? new Told([Of(shot, feedback.Says)]) : Told.Nothing;
            case FeedbackWhen.Outside:
                return new Told([OfOutside(shot, feedback.Says)]);
            case FeedbackWhen.Summary summary:
                // Numbers have no gaps, so this many shots at most are waiting; only voided ones make them fewer.
                var atMost = shot.Number - toldUpTo;
                var waiting = blockEnds || atMost >= summary.Shots ? Waiting(feedback, past, shot.Run, toldUpTo) : Told.Nothing;
                return blockEnds || waiting.Results.Count >= summary.Shots ? waiting : Told.Nothing;
            case FeedbackWhen.None:
                return Told.Nothing;
            default:
                throw new InvalidOperationException($"unknown feedback {feedback.When}");
        }
    }

    /// <summary>What a summary still has to tell when its block ends without a shot; null when nothing waits.</summary>
    public static Told? AtEnd(Feedback feedback, History? past, int run, int toldUpTo) =>
        feedback.When is FeedbackWhen.Summary && Waiting(feedback, past, run, toldUpTo) is { Results.Count: > 0 } told ? told : null;

    private static Told Waiting(Feedback feedback, History? past, int run, int toldUpTo) => new(
        History.CountedShots(past, run).TakeWhile(shot => shot.Number > toldUpTo).Reverse().Select(shot => Of(shot, feedback.Says)).ToValueList());

    /// <summary>Told shots are spread evenly: a shot is told when the shares up to it pass the next half.</summary>
    private static bool IsTold(FeedbackWhen.Fading fading, int number) =>
        Math.Floor(SharesUpTo(fading, number) + 0.5) > Math.Floor(SharesUpTo(fading, number - 1) + 0.5);

    private static double SharesUpTo(FeedbackWhen.Fading fading, int number)
    {
        var falling = Math.Min(number, fading.OverShots);
        var fall = fading.OverShots > 1
            ? (fading.FirstShare - fading.LastShare) * falling * (falling - 1.0) / (2.0 * (fading.OverShots - 1)) : 0;
        return (falling * fading.FirstShare) - fall + ((number - falling) * fading.LastShare);
    }

    private static ToldShot Of(GradedShot shot, FeedbackSays says)
    {
        if (says == FeedbackSays.Hit)
        {
            return new ToldShot(shot.Number, shot.Held, []);
        }

        var targets = new ToldTarget[shot.Targets.Count];
        for (var i = 0; i < targets.Length; i++)
        {
            targets[i] = Of(shot.Targets[i], says);
        }

        return new ToldShot(shot.Number, shot.Held, ValueList.Create<ToldTarget>(targets));
    }

    /// <summary>Size and side of the targets that were not held; of a shot that held, only that.</summary>
    private static ToldShot OfOutside(GradedShot shot, FeedbackSays says)
    {
        var targets = says == FeedbackSays.Hit || shot.Held != false
            ? []
            : shot.Targets.Where(result => result.Grade is { Holds: false }).Select(result => Of(result, says)).ToValueList();
        return new ToldShot(shot.Number, shot.Held, targets);
    }

    private static ToldTarget Of(TargetResult result, FeedbackSays says) => new(
        result.Name,
        result.Miss is { } miss ? miss.CompareTo(BoardOffset.Zero) : null,
        says == FeedbackSays.Exact ? result.Miss : null);
}
