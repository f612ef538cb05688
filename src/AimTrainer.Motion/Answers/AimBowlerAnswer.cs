using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A bowler's usual throw and scatter, for machines.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="SpeedMph">At the laydown.</param>
/// <param name="RevsRpm">Rev rate.</param>
/// <param name="AxisRotationDeg">Axis rotation.</param>
/// <param name="AxisTiltDeg">Axis tilt.</param>
/// <param name="Spreads">Of laydown (boards), launch angle (degrees), speed (mph), revs (rpm).</param>
/// <param name="Correlations">In the same order, four rows of four.</param>
public sealed record AimBowlerAnswer(
    Hand Hand,
    decimal? SpeedMph,
    decimal? RevsRpm,
    decimal? AxisRotationDeg,
    decimal? AxisTiltDeg,
    ValueList<decimal?> Spreads,
    ValueList<ValueList<decimal?>> Correlations)
{
    /// <summary>The document of a bowler.</summary>
    public static AimBowlerAnswer Of(AimBowler bowler) => new(
        bowler.Hand,
        PlainNumber.Of(bowler.SpeedMph),
        PlainNumber.Of(bowler.RevsRpm),
        PlainNumber.Of(bowler.AxisRotationDegrees),
        PlainNumber.Of(bowler.AxisTiltDegrees),
        bowler.Scatter.Spreads.AsEnumerable().Select(PlainNumber.Of).ToValueList(),
        bowler.Scatter.Correlations.AsEnumerable().Select(PlainNumber.Of).Chunk(Scatter.Parts).Select(row => row.ToValueList()).ToValueList());
}
