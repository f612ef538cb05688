namespace AimTrainer.Motion;

/// <summary>What halving one spread would add on the best line.</summary>
/// <param name="Part">Which.</param>
/// <param name="Chance">The chance then, 0 to 1.</param>
/// <param name="Points">How much more than now, in points of a hundred.</param>
/// <param name="ErrorPoints">Its standard error from counting; both were thrown with the same numbers of chance.</param>
public sealed record SpreadWorth(ScatterPart Part, double Chance, double Points, double ErrorPoints);
