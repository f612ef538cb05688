namespace AimTrainer.Motion;

/// <summary>What a fit says of one number of the lane.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Value">The value that explains the shots best; that of the sheet when it was not fitted.</param>
/// <param name="Fitted">Whether it was fitted.</param>
/// <param name="Low">Lower 95 % limit; null when the shots set none within what is allowed.</param>
/// <param name="High">Upper 95 % limit; null likewise.</param>
/// <param name="CannotTell">Why the shots cannot tell it, and what would; null when they can, and when it was not fitted.</param>
public sealed record FittedParameter(LaneParameter Parameter, double Value, bool Fitted, double? Low, double? High, string? CannotTell);
