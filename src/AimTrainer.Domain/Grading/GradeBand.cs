namespace AimTrainer.Domain;

/// <summary>
/// What can be awarded: a closed band around the target's centre that reaches to <paramref name="WidthShare"/> of the target's
/// width plus <paramref name="Beyond"/> on either side.
/// </summary>
/// <param name="Award">What a crossing in this band is awarded.</param>
/// <param name="WidthShare">Share of the target's whole width, 0 or more; 0.5 reaches its edges.</param>
/// <param name="Beyond">Boards on top, 0 or more.</param>
public sealed record GradeBand(Grade Award, decimal WidthShare, BoardOffset Beyond)
{
    /// <summary>How far from the centre the band reaches, exact, in boards.</summary>
    public decimal ReachBoards(BoardOffset width) => (width.ExactBoards * WidthShare) + Beyond.ExactBoards;
}
