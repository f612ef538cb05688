using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// From where a bowler looks at the lane, for how long a thing on it must be to be seen. With the eye h above the lane and the place
/// D before it along the floor (the stand behind the foul line and the distance past it together), a stretch of length L about that
/// place is seen under the angle
/// <code>atan(h / (D - L/2)) - atan(h / (D + L/2)),  whose tangent is  h L / (D² + h² - L²/4)</code>
/// and a width w across under 2 atan(w / (2 √(D² + h²))). Solved for L with t the tangent of the angle wanted:
/// <code>L = 2 (√(h² + t² (D² + h²)) - h) / t</code>
/// </summary>
public sealed record BowlerView
{
    /// <summary>Shortest and longest stand behind the foul line for which displays are made, in feet.</summary>
    public const double Nearest = 15, Farthest = 25;

    /// <summary>An eye 5.5 ft up, 20 ft behind the foul line.</summary>
    public static BowlerView Default { get; } = new(Feet.FromFeet(5.5), Feet.FromFeet(20));

    /// <summary>Makes a view.</summary>
    /// <param name="eyeHeight">Height of the eye above the lane, 2 to 8 ft.</param>
    /// <param name="behind">How far behind the foul line, 0 to 30 ft.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public BowlerView(Feet eyeHeight, Feet behind)
    {
        if (!(eyeHeight.Value is >= 2 and <= 8))
        {
            throw new ArgumentOutOfRangeException(nameof(eyeHeight), eyeHeight, "allowed: 2 to 8 ft");
        }

        if (!(behind.Value is >= 0 and <= 30))
        {
            throw new ArgumentOutOfRangeException(nameof(behind), behind, "allowed: 0 to 30 ft");
        }

        EyeHeight = eyeHeight;
        Behind = behind;
    }

    /// <summary>Height of the eye above the lane.</summary>
    public Feet EyeHeight { get; }

    /// <summary>How far behind the foul line the bowler stands, positive.</summary>
    public Feet Behind { get; }

    /// <summary>The angle under which a stretch along the lane is seen, up and down.</summary>
    /// <param name="near">Where it starts.</param>
    /// <param name="far">Where it ends, farther down.</param>
    public Degrees SeenHeight(Feet near, Feet far) => InDegrees(
        Math.Atan2(EyeHeight.Value, Behind.Value + near.Value) - Math.Atan2(EyeHeight.Value, Behind.Value + far.Value));

    /// <summary>The angle under which a width across the lane is seen.</summary>
    /// <param name="across">The width.</param>
    /// <param name="at">Where it lies.</param>
    public Degrees SeenWidth(Inches across, Feet at) => InDegrees(2 * Math.Atan2(across.Value / 24, DistanceTo(at)));

    /// <summary>How long a thing along the lane must be to be seen under an angle.</summary>
    /// <param name="seen">The angle, more than 0, at most 10 degrees.</param>
    /// <param name="middle">Where its middle lies.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside its range.</exception>
    public Inches LengthSeenUnder(Degrees seen, Feet middle)
    {
        if (!(seen.Value is > 0 and <= 10))
        {
            throw new ArgumentOutOfRangeException(nameof(seen), seen, "allowed: more than 0, at most 10 degrees");
        }

        var (h, t, reach) = (EyeHeight.Value, Math.Tan(seen.Value * Math.PI / 180), DistanceTo(middle));

        // The formula above, multiplied out so that no two nearly equal numbers are taken from each other.
        return Inches.FromInches(24 * t * reach * reach / (Math.Sqrt((h * h) + (t * t * reach * reach)) + h));
    }

    /// <summary>How long a thing along the lane must be to look as high as it looks wide.</summary>
    /// <param name="across">Its width.</param>
    /// <param name="middle">Where its middle lies.</param>
    public Inches LengthSeenAs(Inches across, Feet middle) => LengthSeenUnder(SeenWidth(across, middle), middle);

    private double DistanceTo(Feet at) => Math.Sqrt(((Behind.Value + at.Value) * (Behind.Value + at.Value)) + (EyeHeight.Value * EyeHeight.Value));

    private static Degrees InDegrees(double radians) => Degrees.FromDegrees(radians * 180 / Math.PI);
}
