using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>Where the misses came from, for the line with most split shots among the newest; shots with a gross miss are set aside.</summary>
/// <param name="Line">The line, by its places; null when nothing was thrown.</param>
/// <param name="Shots">Shots thrown at it.</param>
/// <param name="Split">Those whose straight part is known.</param>
/// <param name="Target">The farthest target of it with known shares, or else the farthest; null when none was split.</param>
/// <param name="Why">Why there are no shares, and what to measure; null when there are.</param>
public sealed record ReportCauses(string? Line, int Shots, int Split, TargetCauses? Target, string? Why)
{
    /// <summary>Fewest split shots before a cause is named.</summary>
    public const int Fewest = 10;

    /// <summary>Shots with a gross miss at this line: they are not in the split.</summary>
    public int GrossSetAside { get; init; }

    /// <summary>The shares; null when they are not known.</summary>
    public VarianceShares? Shares => Target?.Shares;
}
