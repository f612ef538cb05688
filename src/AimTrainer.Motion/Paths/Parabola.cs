namespace AimTrainer.Motion;

/// <summary>Even friction: the ball runs on a parabola until it rolls, and both are known exactly.</summary>
internal static class Parabola
{
    /// <summary>The state after some metres, before the ball rolls (or all along, when it rolls already and loses no slip).</summary>
    /// <param name="from">The state at the start.</param>
    /// <param name="metres">How far downlane of it.</param>
    /// <param name="rate">Slip lost a second, m/s².</param>
    /// <param name="slide">The release.</param>
    public static PathState At(in PathState from, double metres, double rate, in Slide slide) =>
        After(from, SecondsTo(from, metres, rate, slide), rate, slide);

    /// <summary>How long it takes for some metres; endless when it would roll first.</summary>
    public static double SecondsTo(in PathState from, double metres, double rate, in Slide slide)
    {
        var forward = slide.FinalX + (from.Slip * slide.ShareX);
        var square = (forward * forward) - (2 * rate * slide.ShareX * metres);
        return square < 0 ? double.PositiveInfinity : 2 * metres / (forward + Math.Sqrt(square));
    }

    /// <summary>The state after some seconds.</summary>
    public static PathState After(in PathState from, double seconds, double rate, in Slide slide)
    {
        var inward = slide.FinalY + (from.Slip * slide.ShareY);
        return new PathState(
            from.Slip - (rate * seconds),
            from.Board + (inward * seconds) - (rate * slide.ShareY * seconds * seconds / 2),
            from.Seconds + seconds,
            0);
    }

    /// <summary>How far downlane the ball comes in some seconds, metres.</summary>
    public static double MetresIn(in PathState from, double seconds, double rate, in Slide slide) =>
        ((slide.FinalX + (from.Slip * slide.ShareX)) * seconds) - (rate * slide.ShareX * seconds * seconds / 2);

    /// <summary>When the ball first reaches a board within some seconds; endless when it does not.</summary>
    public static double SecondsToBoard(in PathState from, double board, double most, double rate, in Slide slide)
    {
        // Half bend t² + inward t - way = 0, in the form that keeps its digits.
        var (inward, bend) = (slide.FinalY + (from.Slip * slide.ShareY), -rate * slide.ShareY);
        var way = board - from.Board;
        var square = (inward * inward) + (2 * bend * way);
        if (square < 0)
        {
            return double.PositiveInfinity;
        }

        var root = inward + Math.CopySign(Math.Sqrt(square), inward);
        var first = 2 * way / root;
        var second = bend == 0 ? double.PositiveInfinity : -root / bend;
        var best = double.PositiveInfinity;
        foreach (var seconds in (ReadOnlySpan<double>)[first, second])
        {
            best = seconds >= 0 && seconds <= most && seconds < best ? seconds : best;
        }

        return best;
    }
}
