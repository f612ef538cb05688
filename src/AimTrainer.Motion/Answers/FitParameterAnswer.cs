namespace AimTrainer.Motion;

/// <summary>One number of a fitted lane, for machines.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Value">Best value; null for a pattern that does not end.</param>
/// <param name="Fitted">Whether it was fitted.</param>
/// <param name="Low">Lower 95 % limit; null: none.</param>
/// <param name="High">Upper 95 % limit; null: none.</param>
/// <param name="CannotTell">Why the shots cannot tell it; null when they can.</param>
public sealed record FitParameterAnswer(LaneParameter Parameter, decimal? Value, bool Fitted, decimal? Low, decimal? High, string? CannotTell)
{
    internal static FitParameterAnswer Of(FittedParameter one) => new(
        one.Parameter,
        PlainNumber.Of(one.Value),
        one.Fitted,
        one.Low is { } low ? PlainNumber.Of(low) : null,
        one.High is { } high ? PlainNumber.Of(high) : null,
        one.CannotTell);
}
