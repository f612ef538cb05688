using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>
/// The same physics a second time, in another form: six velocities and places in the lane's frame, time as the clock, classical Runge-Kutta
/// with very small steps, both hands by their signs. Slow, and shares nothing with the product but the oil.
/// </summary>
internal static class SlowIntegrator
{
    private const double Gravity = 9.80665;
    private const double LongestStep = 5e-4;
    private const double Pins = 18.288;

    /// <summary>The bowler's board and the heading at 60 ft and the time until there; null when the ball leaves the boards.</summary>
    public static (double Board, double AngleDegrees, double Seconds)? Run(RandomThrow thrown)
    {
        var (lane, ball, release) = (thrown.Lane, thrown.Ball, thrown.Release);
        var boardMetres = lane.WidthInches * 0.0254 / 39;
        var right = release.Hand == Hand.Right;
        var start = LabFrame.Of(release, ball);
        double[] state = [release.LaydownFeet * 0.3048, ((right ? release.LaydownBoard : 40 - release.LaydownBoard) - 0.5) * boardMetres, start.Vx, start.Vy, start.Wx, start.Wy];
        var perSlip = 1 + (ball.RadiusMetres * ball.RadiusMetres / start.GyrationSquared);
        var (seconds, rolls) = (0.0, false);
        while (state[0] < Pins)
        {
            var step = LongestStep;
            if (!rolls)
            {
                // The slip shrinks to nothing in about this time, and its direction with it: no step reaches over that.
                var (slipX, slipY) = (state[2] - (ball.RadiusMetres * state[5]), state[3] + (ball.RadiusMetres * state[4]));
                var left = Math.Sqrt((slipX * slipX) + (slipY * slipY)) / (Friction(lane, ball, state[0], state[1], boardMetres) * Gravity * perSlip);
                rolls = left < 1e-7;
                step = Math.Min(step, Math.Max(left / 2, 1e-8));
            }

            step = Math.Min(step, Math.Max((Pins - state[0]) / state[2], 1e-12));
            foreach (var stretch in lane.Oil)
            {
                // Oil may jump where a stretch ends: one tiny step reaches over it, no other.
                var away = (stretch.EndFeet * 0.3048) - state[0];
                step = away > 2e-6 ? Math.Min(step, (away - 1e-6) / state[2]) : away > 0 ? Math.Min(step, 4e-6 / state[2]) : step;
            }

            if (rolls)
            {
                state = Add(state, [state[2], state[3], 0, 0, 0, 0], step);
            }
            else
            {
                var k1 = Rates(state);
                var k2 = Rates(Add(state, k1, step / 2));
                var k3 = Rates(Add(state, k2, step / 2));
                var k4 = Rates(Add(state, k3, step));
                state = [.. state.Select((value, i) => value + (step / 6 * (k1[i] + (2 * k2[i]) + (2 * k3[i]) + k4[i])))];
            }

            seconds += step;
            if (state[1] < 0 || state[1] > 39 * boardMetres)
            {
                return null;
            }
        }

        var board = (state[1] / boardMetres) + 0.5;
        return (right ? board : 40 - board, Math.Atan2(state[3], state[2]) * 180 / Math.PI * (right ? 1 : -1), seconds);

        double[] Rates(double[] at)
        {
            var (slipX, slipY) = (at[2] - (ball.RadiusMetres * at[5]), at[3] + (ball.RadiusMetres * at[4]));
            var slip = Math.Sqrt((slipX * slipX) + (slipY * slipY));
            var push = slip == 0 ? 0 : -Friction(lane, ball, at[0], at[1], boardMetres) * Gravity / slip;
            var (fx, fy) = (push * slipX, push * slipY);
            return [at[2], at[3], fx, fy, ball.RadiusMetres / start.GyrationSquared * fy, -ball.RadiusMetres / start.GyrationSquared * fx];
        }
    }

    private static double Friction(LaneSurface lane, Ball ball, double x, double y, double boardMetres) =>
        ball.Grip * (lane.DryFriction + ((lane.OilFriction - lane.DryFriction) * (1 - Math.Exp(-lane.OilAt(x / 0.3048, (y / boardMetres) + 0.5) / lane.OilScaleUnits))));

    private static double[] Add(double[] state, double[] rates, double step) => [.. state.Select((value, i) => value + (step * rates[i]))];
}
