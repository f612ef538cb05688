namespace AimTrainer.Motion;

/// <summary>
/// A release as the motion needs it, in the frame of the bowler's hand: x metres downlane, y boards inward. Slip direction and final
/// velocity are known from the start; only the amount of slip that is left changes on the way.
/// </summary>
/// <remarks>
/// Source: Euler's equations of a symmetric ball with Coulomb friction at one point of contact; see <c>docs/motion.md</c>.
/// Velocity = final velocity + slip left × share × slip direction.
/// </remarks>
internal readonly struct Slide
{
    public const double Gravity = 9.80665;

    public Slide(in Release release, Ball ball, double boardMetres)
    {
        var beta = ball.Beta;
        var share = beta / (1 + beta);
        var (sinLaunch, cosLaunch) = Math.SinCos(release.LaunchAngleDegrees * Math.PI / 180);
        var (sinTurn, cosTurn) = Math.SinCos(release.AxisRotationDegrees * Math.PI / 180);
        var rim = release.RevsRpm * 2 * Math.PI / 60 * ball.RadiusMetres * Math.Cos(release.AxisTiltDegrees * Math.PI / 180);

        // Along the launch direction and inward of it.
        var along = release.SpeedMetresPerSecond - (rim * cosTurn);
        var inward = -rim * sinTurn;
        var slip = Math.Sqrt((along * along) + (inward * inward));
        var (slipX, slipY) = ((along * cosLaunch) + (inward * sinLaunch), (inward * cosLaunch) - (along * sinLaunch));

        X = release.LaydownFeet * FrictionGrid.MetresPerFoot;
        Y = release.LaydownBoard;
        Slip = slip;
        (DirectionX, DirectionY) = slip > 0 ? (slipX / slip, slipY / slip) : (0, 0);
        (ShareX, ShareY) = (share * DirectionX, share * DirectionY / boardMetres);
        FinalX = (release.SpeedMetresPerSecond * cosLaunch) - (share * slipX);
        FinalY = ((-release.SpeedMetresPerSecond * sinLaunch) - (share * slipY)) / boardMetres;
        Slowing = ball.Grip * Gravity * (1 + (1 / beta));
        Push = ball.Grip * Gravity;

        // Heading straight downlane: only on the way from outward to inward.
        var straight = -FinalY / ShareY;
        Straight = ShareY < 0 && straight > 0 && straight < slip ? straight : double.NaN;
    }

    /// <summary>Laydown, metres past the foul line.</summary>
    public double X { get; }

    /// <summary>Laydown, the bowler's board.</summary>
    public double Y { get; }

    /// <summary>Slip at the laydown, m/s.</summary>
    public double Slip { get; }

    /// <summary>Direction of the slip, downlane.</summary>
    public double DirectionX { get; }

    /// <summary>Direction of the slip, inward.</summary>
    public double DirectionY { get; }

    /// <summary>Velocity downlane for each m/s of slip left, m/s.</summary>
    public double ShareX { get; }

    /// <summary>Velocity inward for each m/s of slip left, boards/s.</summary>
    public double ShareY { get; }

    /// <summary>Velocity downlane when rolling, m/s.</summary>
    public double FinalX { get; }

    /// <summary>Velocity inward when rolling, boards/s.</summary>
    public double FinalY { get; }

    /// <summary>Slip lost a second for each unit of friction, m/s².</summary>
    public double Slowing { get; }

    /// <summary>Push of the lane for each unit of friction, m/s².</summary>
    public double Push { get; }

    /// <summary>Slip left when the ball heads straight downlane; not a number when it never turns from outward to inward.</summary>
    public double Straight { get; }
}
