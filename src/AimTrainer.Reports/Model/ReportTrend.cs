using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The spread over sessions, from test blocks only.</summary>
/// <param name="Place">Where on the lane; null when there is no test at all.</param>
/// <param name="Points">The sessions' tests, oldest first.</param>
/// <param name="TooFewShots">Tests that had too few shots for a point.</param>
/// <param name="OtherPlaces">Other places with tests, which this report does not show.</param>
/// <param name="Figures">Everything that is worked out from the series; null without a point.</param>
/// <param name="Why">Why there is no point; null when there is one.</param>
public sealed record ReportTrend(
    string? Place, ValueList<ReportTrendPoint> Points, int TooFewShots, ValueList<string> OtherPlaces, TrendFigures? Figures, string? Why)
{
    /// <summary>What the rule for the word "improved" says.</summary>
    public ImprovementVerdict Verdict => Figures?.Rule?.Verdict ?? ImprovementVerdict.TooFew;

    /// <summary>Whether sessions resemble the ones before them more than chance explains: the limits are then too narrow.</summary>
    public bool Alike => Figures is { NeighbourCorrelation: { } correlation, NeighboursAlike: { } alike } && correlation > alike;
}
