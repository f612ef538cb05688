namespace AimTrainer.Analysis;

/// <summary>What a shot's parts are held against.</summary>
public enum PlanKind
{
    /// <summary>The straight line through the first and the last target of the line.</summary>
    StraightThroughTargets,

    /// <summary>
    /// The laydown and angle from which the ball meets the first and the last target when it moves beyond the straight part as it usually does.
    /// </summary>
    UsualMovement,

    /// <summary>For a single target: the bowler's usual angle, laid down so that the ball, moving as usual, meets the target.</summary>
    UsualAngle,
}
