using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What a fit needs to know beside the marks.</summary>
public sealed record FitSettings
{
    /// <summary>Most distortion terms.</summary>
    public const int MostTerms = 2;

    /// <summary>The projector's picture.</summary>
    public required PictureSize Picture { get; init; }

    /// <summary>The lane's width: with it inches become boards.</summary>
    public required Inches LaneWidth { get; init; }

    /// <summary>
    /// The stretch of lane that the projector is to draw; null takes what its picture covers around the marks, from nearest to farthest
    /// and on as far as some of the lane is in the picture.
    /// </summary>
    public LaneStretch? Stretch { get; init; }

    /// <summary>How many radial terms of lens distortion are fitted: 0, 1 or 2.</summary>
    public int DistortionTerms { get; init; }

    /// <summary>The largest root mean square of the marks' errors, in pixels, that is accepted.</summary>
    public double RmsLimitPixels { get; init; } = 2.5;

    /// <summary>The largest error of one mark, in pixels, that is accepted.</summary>
    public double WorstLimitPixels { get; init; } = 6;

    /// <summary>
    /// How many marks a fit needs. Four marks give the eight numbers that a map without distortion has; each radial term adds one
    /// number, and two more marks are asked for, so that a wrong mark shows and is not taken for a bent lens.
    /// </summary>
    /// <param name="distortionTerms">0, 1 or 2.</param>
    public static int MarksNeeded(int distortionTerms) => 4 + (2 * distortionTerms);
}
