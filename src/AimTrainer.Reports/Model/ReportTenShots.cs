using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The ten-shot spread at the arrows, beside the published bands: a reference, never a verdict.</summary>
/// <param name="Target">Which target; null when no ten in a row were measured.</param>
/// <param name="CentreBoard">Its middle; null likewise.</param>
/// <param name="DistanceFeet">Its distance; null likewise.</param>
/// <param name="Sessions">One a session, oldest first.</param>
/// <param name="Bands">The published bands on this lane, tightest first.</param>
/// <param name="Caveats">What must be said beside them.</param>
/// <param name="Why">Why there is none; null when there is one.</param>
public sealed record ReportTenShots(
    string? Target,
    double? CentreBoard,
    double? DistanceFeet,
    ValueList<ReportTen> Sessions,
    ValueList<PublishedSpreadBand> Bands,
    ValueList<string> Caveats,
    string? Why);
