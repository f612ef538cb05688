using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>A fitted lane as <c>docs/motion.md</c> describes it.</summary>
internal static class FitLaneJson
{
    public static object Of(LaneFitResult fit, FitLaneInput input) => new
    {
        OilFriction = PlainNumber.Of(fit.Numbers.OilFriction),
        DryFriction = PlainNumber.Of(fit.Numbers.DryFriction),
        PatternFeet = PlainNumber.Of(fit.Numbers.PatternFeet),
        fit.Tells,
        Parameters = fit.Parameters.AsEnumerable().Select(one => new
        {
            Parameter = Json.Word(one.Parameter),
            Value = PlainNumber.Of(one.Value),
            one.Fitted,
            Low = one.Low is { } low ? PlainNumber.Of(low) : null,
            High = one.High is { } high ? PlainNumber.Of(high) : null,
            one.CannotTell,
        }),
        NoiseBoards = PlainNumber.Of(fit.NoiseBoards),
        fit.NoiseGiven,
        MisfitShare = PlainNumber.Of(fit.MisfitShare),
        fit.Freedom,
        fit.Shots,
        LeftOut = input.LeftOut.Select(one => new { one.Line, one.Why }),
        UsualTaken = input.Usual.Select(one => new { What = one.Key, Shots = one.Value }),
        Misfits = fit.Misfits.AsEnumerable().Select(one => new { input.Shots[one.Shot].Line, Noises = PlainNumber.Of(one.Noises) }),

        // Not rounded to nine decimals: the variance of a friction is a small number.
        Covariance = fit.Covariance.AsEnumerable().Chunk(LaneNumbers.Count),
    };
}
