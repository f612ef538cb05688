namespace AimTrainer.Motion;

/// <summary>Looks between the two ends of a step: cubics through the values and slopes of both.</summary>
internal static class Step
{
    private const int MostTries = 60;

    /// <summary>The state at a distance from the start of the step.</summary>
    public static PathState At(in PathState from, in PathState to, double length, double metres, in Slide slide)
    {
        if (length <= 0)
        {
            return from;
        }

        var share = metres / length;
        return new PathState(
            Cubic(from.Slip, to.Slip, from.SlipRate * length, to.SlipRate * length, share),
            Cubic(from.Board, to.Board, Slope(from, slide) * length, Slope(to, slide) * length, share),
            Cubic(from.Seconds, to.Seconds, length / Forward(from, slide), length / Forward(to, slide), share),
            from.SlipRate + ((to.SlipRate - from.SlipRate) * share));
    }

    /// <summary>Where in the step the slip has fallen to a value that lies between those of its ends; metres from its start.</summary>
    public static double WhereSlip(in PathState from, in PathState to, double length, double slip, in Slide slide) =>
        Where(from, to, length, length, slip, static state => state.Slip, slide);

    /// <summary>Where before a limit the ball reaches a board; metres from the start of the step.</summary>
    public static double WhereBoard(in PathState from, in PathState to, double length, double limit, double board, in Slide slide) =>
        Where(from, to, length, limit, board, static state => state.Board, slide);

    /// <summary>Regula falsi with halving of the end that stays (Illinois): sure, and fast on smooth curves.</summary>
    /// <remarks>Source: Dowell, Jarratt, "A modified regula falsi method for computing the root of an equation", BIT 11, 1971.</remarks>
    private static double Where(in PathState from, in PathState to, double length, double limit, double wanted, Func<PathState, double> value, in Slide slide)
    {
        var (low, high) = (0.0, limit);
        var (atLow, atHigh) = (value(from) - wanted, value(At(from, to, length, limit, slide)) - wanted);
        if (atLow * atHigh >= 0)
        {
            return Math.Abs(atLow) < Math.Abs(atHigh) ? low : high;
        }

        for (var i = 0; i < MostTries && Math.Abs(high - low) > 1e-12; i++)
        {
            var middle = high - (atHigh * (high - low) / (atHigh - atLow));
            var atMiddle = value(At(from, to, length, middle, slide)) - wanted;
            if (atMiddle == 0)
            {
                return middle;
            }

            if (atMiddle * atHigh < 0)
            {
                (low, atLow) = (high, atHigh);
            }
            else
            {
                atLow /= 2;
            }

            (high, atHigh) = (middle, atMiddle);
            if (Math.Abs(atMiddle) < 1e-13)
            {
                return middle;
            }
        }

        return high;
    }

    private static double Forward(in PathState state, in Slide slide) => slide.FinalX + (state.Slip * slide.ShareX);

    private static double Slope(in PathState state, in Slide slide) => (slide.FinalY + (state.Slip * slide.ShareY)) / Forward(state, slide);

    private static double Cubic(double from, double to, double fromSlope, double toSlope, double share)
    {
        var rest = 1 - share;
        return (from * rest * rest * (1 + (2 * share))) + (to * share * share * (3 - (2 * share)))
            + (fromSlope * rest * rest * share) - (toSlope * share * share * rest);
    }
}
