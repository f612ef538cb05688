using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>Up to where a difference does not matter; each more than 0.</summary>
public sealed record BallsMargins
{
    /// <summary>Of boards.</summary>
    public double MarginBoards { get; init; } = 0.5;

    /// <summary>Of directions, degrees.</summary>
    public double MarginDegrees { get; init; } = 0.5;

    /// <summary>Of the breakpoint's distance, feet.</summary>
    public double MarginFeet { get; init; } = 1;

    /// <summary>Of speed, mph.</summary>
    public double MarginMph { get; init; } = 0.25;

    /// <summary>The margin of a unit.</summary>
    public double Of(MeasureUnit unit) => unit switch
    {
        MeasureUnit.Boards => MarginBoards,
        MeasureUnit.Feet => MarginFeet,
        MeasureUnit.Degrees => MarginDegrees,
        MeasureUnit.DegreesPerFoot => MarginDegrees / ComparisonSettings.SharpnessMarginFeet,
        _ => MarginMph,
    };
}
