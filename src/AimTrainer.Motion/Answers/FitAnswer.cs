using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A fitted lane for machines, as <c>docs/motion.md</c> describes it.</summary>
/// <param name="OilFriction">Best value, or that of the sheet.</param>
/// <param name="DryFriction">Likewise.</param>
/// <param name="PatternFeet">Likewise; null when the oil does not end.</param>
/// <param name="Tells">Whether the shots tell everything that was fitted.</param>
/// <param name="Parameters">Each number with its limits.</param>
/// <param name="NoiseBoards">Noise of a measured board.</param>
/// <param name="NoiseGiven">Whether it was given.</param>
/// <param name="MisfitShare">Misfit over what a given noise explains.</param>
/// <param name="Freedom">Measured values less unknowns.</param>
/// <param name="Shots">Shots that were fitted.</param>
/// <param name="LeftOut">Shots that were not, and why.</param>
/// <param name="UsualTaken">How often a usual value was taken.</param>
/// <param name="Misfits">Shots that stand out.</param>
/// <param name="Covariance">Of oil friction, dry friction, pattern end; not rounded, because the variance of a friction is a small number.</param>
public sealed record FitAnswer(
    decimal? OilFriction,
    decimal? DryFriction,
    decimal? PatternFeet,
    bool Tells,
    ValueList<FitParameterAnswer> Parameters,
    decimal? NoiseBoards,
    bool NoiseGiven,
    decimal? MisfitShare,
    int Freedom,
    int Shots,
    ValueList<FitLeftOutAnswer> LeftOut,
    ValueList<FitUsualAnswer> UsualTaken,
    ValueList<FitMisfitAnswer> Misfits,
    ValueList<ValueList<double>> Covariance)
{
    /// <summary>The document of a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="input">What it was made from.</param>
    public static FitAnswer Of(LaneFitResult fit, FitShots input) => new(
        PlainNumber.Of(fit.Numbers.OilFriction),
        PlainNumber.Of(fit.Numbers.DryFriction),
        PlainNumber.Of(fit.Numbers.PatternFeet),
        fit.Tells,
        fit.Parameters.Select(FitParameterAnswer.Of).ToValueList(),
        PlainNumber.Of(fit.NoiseBoards),
        fit.NoiseGiven,
        PlainNumber.Of(fit.MisfitShare),
        fit.Freedom,
        fit.Shots,
        input.LeftOut.Select(one => new FitLeftOutAnswer(one.Line, one.Why)).ToValueList(),
        input.Usual.Select(one => new FitUsualAnswer(one.What, one.Shots)).ToValueList(),
        fit.Misfits.AsEnumerable().Select(one => new FitMisfitAnswer(input.Shots[one.Shot].Line, PlainNumber.Of(one.Noises))).ToValueList(),
        fit.Covariance.AsEnumerable().Chunk(LaneNumbers.Count).Select(row => row.ToValueList()).ToValueList());
}
