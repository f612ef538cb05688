namespace AimTrainer.Motion;

/// <summary>What halving one spread would add, for machines.</summary>
/// <param name="Spread">Which.</param>
/// <param name="Chance">The chance then.</param>
/// <param name="Points">How much more than now, in points of a hundred.</param>
/// <param name="ErrorPoints">Its standard error from counting.</param>
public sealed record AimHalvingAnswer(ScatterPart Spread, decimal? Chance, decimal? Points, decimal? ErrorPoints);
