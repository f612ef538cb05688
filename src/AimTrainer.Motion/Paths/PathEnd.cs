namespace AimTrainer.Motion;

/// <summary>
/// What one path comes to, small enough for a million of them: bare doubles whose names carry the unit. Boards are the bowler's.
/// What did not happen is not a number (<see cref="double.NaN"/>).
/// </summary>
public readonly record struct PathEnd
{
    /// <summary>Pins or gutter.</summary>
    public PathFinish Finish { get; init; }

    /// <summary>Board at the lane's arrow distance.</summary>
    public double ArrowsBoard { get; init; }

    /// <summary>Board where the ball heads straight downlane, between going out and coming in.</summary>
    public double BreakpointBoard { get; init; }

    /// <summary>Distance of that, feet.</summary>
    public double BreakpointFeet { get; init; }

    /// <summary>Where the ball has stopped sliding, feet.</summary>
    public double RollFeet { get; init; }

    /// <summary>Time until then, seconds.</summary>
    public double RollSeconds { get; init; }

    /// <summary>Board at 60 ft.</summary>
    public double BoardAt60 { get; init; }

    /// <summary>Heading at 60 ft, degrees, positive inward (into the pocket).</summary>
    public double AngleAt60Degrees { get; init; }

    /// <summary>Where the path ends, feet: 60, or where the ball left the boards.</summary>
    public double EndFeet { get; init; }

    /// <summary>Time from the laydown to the end, seconds.</summary>
    public double EndSeconds { get; init; }

    /// <summary>Speed at the end, m/s.</summary>
    public double EndMetresPerSecond { get; init; }

    /// <summary>Slip of the contact point that is left at the end, m/s; 0 when the ball rolls.</summary>
    public double EndSlipMetresPerSecond { get; init; }

    /// <summary>Board of the ball's middle when it first touches the head pin; not a number when it passes by.</summary>
    public double ContactBoard { get; init; }

    /// <summary>Heading at that moment, degrees, positive inward.</summary>
    public double ContactAngleDegrees { get; init; }

    /// <summary>Distance of the ball's middle at that moment, feet.</summary>
    public double ContactFeet { get; init; }
}
