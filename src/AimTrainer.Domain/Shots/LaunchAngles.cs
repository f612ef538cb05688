namespace AimTrainer.Domain;

/// <summary>Works out launch angles.</summary>
public static class LaunchAngles
{
    /// <summary>
    /// How far down the lane, in feet, a crossing must lie for an angle to be worked out from it: nearer, a reading that is off by
    /// a tenth of a board would turn the angle by more than a tenth of a degree.
    /// </summary>
    public const double ShortestBaseFeet = 5;

    /// <summary>
    /// The launch angle that was reported; else the direction from the laydown to the farthest crossing in the straight part of
    /// the lane, from <see cref="ShortestBaseFeet"/> to <see cref="LaneProfile.StraightDistance"/>; else null.
    /// </summary>
    public static LaunchAngle? Of(Shot shot, LaneProfile lane)
    {
        if (shot.LaunchAngle is { } reported)
        {
            return new LaunchAngle(reported, false);
        }

        if (shot.Laydown is not { } laydown)
        {
            return null;
        }

        Crossing? farthest = null;
        foreach (var crossing in shot.Crossings)
        {
            if (crossing.Distance.Value >= ShortestBaseFeet && crossing.Distance <= lane.StraightDistance)
            {
                farthest = crossing;
            }
        }

        return farthest is { } far
            ? new LaunchAngle(LineArithmetic.LaunchAngle(new Crossing(default, laydown), far, lane), true)
            : null;
    }
}
