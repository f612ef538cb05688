using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>How balls are compared.</summary>
public sealed record ComparisonSettings
{
    /// <summary>From how many throws of each ball there is a verdict.</summary>
    public const int Fewest = 5;

    /// <summary>Sharpness is a direction over this length: its margin is that of directions over these feet.</summary>
    public const double SharpnessMarginFeet = 10;

    /// <summary>The ball that the others are held against, as the bowler calls it; capital and small letters are not told apart.</summary>
    public required string Reference { get; init; }

    /// <summary>The lane.</summary>
    public required LaneProfile Lane { get; init; }

    /// <summary>What the throws were aimed at, nearest first; may be empty.</summary>
    public ValueList<Crossing> Targets { get; init; } = [];

    /// <summary>Which throws count; null takes all.</summary>
    public ComparableLimits? Limits { get; init; }

    /// <summary>A difference of boards up to here does not matter; more than 0.</summary>
    public double MarginBoards { get; init; } = 0.5;

    /// <summary>A difference of direction up to here does not matter; more than 0.</summary>
    public double MarginDegrees { get; init; } = 0.5;

    /// <summary>A difference of the breakpoint's distance up to here does not matter; more than 0.</summary>
    public double MarginFeet { get; init; } = 1;

    /// <summary>A difference of speed up to here does not matter; more than 0.</summary>
    public double MarginMph { get; init; } = 0.25;

    /// <summary>The margin of a measure.</summary>
    public double MarginOf(MeasureUnit unit) => unit switch
    {
        MeasureUnit.Boards => MarginBoards,
        MeasureUnit.Feet => MarginFeet,
        MeasureUnit.Degrees => MarginDegrees,
        MeasureUnit.DegreesPerFoot => MarginDegrees / SharpnessMarginFeet,
        _ => MarginMph,
    };
}
