using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// The width that the bowler really uses: 4.133 standard deviations, between which 96 % of a normal scatter falls. And how hard that is at the
/// target's distance, in bits. There is no hurry in these drills, so no throughput is worked out.
/// </summary>
/// <remarks>
/// Source: MacKenzie 1992, Human-Computer Interaction 7:91-139, section 3.4 (√(2πe) = 4.133); Soukoreff &amp; MacKenzie 2004, International
/// Journal of Human-Computer Studies 61:751-789 (log2(distance / width + 1)); ISO 9241-411.
/// </remarks>
/// <param name="Boards">In boards, with the limits of the spread.</param>
/// <param name="Inches">In inches on this lane.</param>
/// <param name="DifficultyBits">log2(distance / width + 1); the limits are those of the width, the other way round.</param>
public sealed record EffectiveWidth(BoundedEstimate Boards, BoundedEstimate Inches, BoundedEstimate DifficultyBits)
{
    /// <summary>Standard deviations in a width.</summary>
    public const double Deviations = 4.133;

    /// <summary>The effective width of a spread.</summary>
    /// <param name="spreadBoards">Standard deviation in boards.</param>
    /// <param name="distance">How far down the lane; null when not all shots were thrown at one distance.</param>
    /// <param name="lane">Whose boards.</param>
    public static EffectiveWidth Of(BoundedEstimate spreadBoards, Feet? distance, LaneProfile lane)
    {
        var boards = spreadBoards.Times(Deviations);
        var inches = boards.Times(lane.BoardWidth.Value);
        if (distance is not { } away)
        {
            return new EffectiveWidth(boards, inches, BoundedEstimate.Unknown("the shots were not thrown at one distance"));
        }

        var why = inches.Value == 0 ? EstimateLimits.NoScatter : inches.Why;
        return new EffectiveWidth(boards, inches, new BoundedEstimate(Bits(inches.Value), Bits(inches.High), Bits(inches.Low), why));

        double? Bits(double? width) => width > 0 ? Math.Log2((away.Value * 12 / width.Value) + 1) : null;
    }
}
