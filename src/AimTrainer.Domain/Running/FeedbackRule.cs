namespace AimTrainer.Domain;

/// <summary>What the bowler is told after a shot.</summary>
internal static class FeedbackRule
{
    /// <summary>What is told now.</summary>
    /// <param name="feedback">The block's rule.</param>
    /// <param name="latest">The run's shots, newest first; the newest is the one just graded.</param>
    /// <param name="throws">Throws of the run that count, this one included.</param>
    /// <param name="blockEnds">Whether the block ends with this shot, so that a summary cannot wait.</param>
    public static Told After(Feedback feedback, IEnumerable<GradedShot> latest, int throws, bool blockEnds)
    {
        switch (feedback.When)
        {
            case FeedbackWhen.Every:
                return new Told([Of(latest.First(), feedback.Says)]);
            case FeedbackWhen.Fading fading:
                return IsTold(fading, throws) ? new Told([Of(latest.First(), feedback.Says)]) : Told.Nothing;
            case FeedbackWhen.Outside:
                var shot = latest.First();
                return new Told([Of(shot, shot.Held == false ? feedback.Says : FeedbackSays.Hit)]);
            case FeedbackWhen.Summary summary:
                var waiting = throws % summary.Shots;
                if (waiting != 0 && !blockEnds)
                {
                    return Told.Nothing;
                }

                var told = latest.Take(waiting == 0 ? summary.Shots : waiting).Select(graded => Of(graded, feedback.Says)).Reverse();
                return new Told(told.ToValueList());
            case FeedbackWhen.None:
                return Told.Nothing;
            default:
                throw new InvalidOperationException($"unknown feedback {feedback.When}");
        }
    }

    /// <summary>Told shots are spread evenly: a shot is told when the shares up to it pass the next half.</summary>
    private static bool IsTold(FeedbackWhen.Fading fading, int number) =>
        Math.Floor(SharesUpTo(fading, number) + 0.5) > Math.Floor(SharesUpTo(fading, number - 1) + 0.5);

    private static double SharesUpTo(FeedbackWhen.Fading fading, int number)
    {
        var falling = Math.Min(number, fading.OverShots);
        var fall = fading.OverShots > 1 ? (fading.FirstShare - fading.LastShare) * falling * (falling - 1) / (2.0 * (fading.OverShots - 1)) : 0;
        return (falling * fading.FirstShare) - fall + ((number - falling) * fading.LastShare);
    }

    private static ToldShot Of(GradedShot shot, FeedbackSays says)
    {
        if (says == FeedbackSays.Hit)
        {
            return new ToldShot(shot.Number, shot.Held, []);
        }

        var targets = shot.Targets.AsEnumerable().Select(result => new ToldTarget(
            result.Name,
            result.Miss is { } miss ? miss.CompareTo(BoardOffset.Zero) : null,
            says == FeedbackSays.Exact ? result.Miss : null));
        return new ToldShot(shot.Number, shot.Held, targets.ToValueList());
    }
}
