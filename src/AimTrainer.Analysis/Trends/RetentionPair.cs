namespace AimTrainer.Analysis;

/// <summary>The test at the end of one visit, and that at the start of the next.</summary>
/// <param name="End">At the end.</param>
/// <param name="Start">At the start of the next.</param>
public sealed record RetentionPair(TestPoint End, TestPoint Start)
{
    /// <summary>Days between the two visits.</summary>
    public double Days => (Start.At - End.At).TotalDays;

    /// <summary>Change of the log spread: above 0 something was lost in between.</summary>
    public double LogChange => Start.LogSpread - End.LogSpread;

    /// <summary>Change of the mean miss, boards.</summary>
    public double BiasChangeBoards => Start.BiasBoards - End.BiasBoards;
}
