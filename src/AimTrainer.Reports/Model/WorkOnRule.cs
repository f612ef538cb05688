namespace AimTrainer.Reports;

/// <summary>Which rule chose the one thing to work on; the first that applies.</summary>
public enum WorkOnRule
{
    /// <summary>Too few measured shots for anything else.</summary>
    Measure,

    /// <summary>The average is off the mark, clearly and by half a board or more.</summary>
    Lean,

    /// <summary>Most of the scatter comes from the laydown.</summary>
    Laydown,

    /// <summary>Most of the scatter comes from the angle.</summary>
    Angle,

    /// <summary>Most of the scatter comes from what the ball does beyond the straight part.</summary>
    Ball,

    /// <summary>The spread grew, by the rule of trends.</summary>
    Grew,

    /// <summary>Too few tests to say whether practice helps.</summary>
    Test,

    /// <summary>Nothing stands out: a narrower target.</summary>
    Narrow,
}
