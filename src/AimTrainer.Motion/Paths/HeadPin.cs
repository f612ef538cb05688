namespace AimTrainer.Motion;

/// <summary>Where the ball first touches the head pin.</summary>
internal static class HeadPin
{
    /// <summary>Radius of a pin where a ball meets it, metres: 2.3775 in.</summary>
    /// <remarks>Source: pin of 4.755 in at its widest, as in the cases of an independent integrator (tests, <c>path-cases.json</c>).</remarks>
    public const double PinRadiusMetres = 0.0603885;

    private const int Rounds = 6;

    /// <summary>Time of the first touch, counted from a moment; null when the ball passes by.</summary>
    /// <param name="x">Metres from the head pin at that moment, positive beyond it.</param>
    /// <param name="y">Metres inward of it.</param>
    /// <param name="vx">Velocity downlane, m/s.</param>
    /// <param name="vy">Velocity inward, m/s.</param>
    /// <param name="ax">Acceleration downlane, m/s², taken as even around the pin.</param>
    /// <param name="ay">Acceleration inward.</param>
    /// <param name="reach">Radius of ball and pin together.</param>
    public static double? Touch(double x, double y, double vx, double vy, double ax, double ay, double reach)
    {
        var (speed2, toward) = ((vx * vx) + (vy * vy), (x * vx) + (y * vy));
        var square = (toward * toward) - (speed2 * ((x * x) + (y * y) - (reach * reach)));
        if (square < 0)
        {
            return null;
        }

        var time = (-toward - Math.Sqrt(square)) / speed2;
        for (var i = 0; i < Rounds && (ax != 0 || ay != 0); i++)
        {
            var (px, py) = (x + (time * (vx + (time * ax / 2))), y + (time * (vy + (time * ay / 2))));
            var slope = 2 * ((px * (vx + (time * ax))) + (py * (vy + (time * ay))));
            if (slope >= 0)
            {
                return null;
            }

            time -= ((px * px) + (py * py) - (reach * reach)) / slope;
        }

        return time;
    }
}
