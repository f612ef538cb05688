namespace AimTrainer.Display;

/// <summary>How somebody sees colours.</summary>
public enum Vision
{
    /// <summary>With all three kinds of cones.</summary>
    Usual,

    /// <summary>Without the cones for long waves: red and green are hard to tell apart, red is dark.</summary>
    WithoutLong,

    /// <summary>Without the cones for middle waves: red and green are hard to tell apart.</summary>
    WithoutMiddle,

    /// <summary>Without the cones for short waves: blue and green, yellow and violet are hard to tell apart.</summary>
    WithoutShort,
}
