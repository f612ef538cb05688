using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>What was worked on.</summary>
/// <param name="Sessions">Sessions in the report.</param>
/// <param name="Visits">Times at the lanes: sessions within twelve hours count as one.</param>
/// <param name="Shots">Shots that count.</param>
/// <param name="First">When the first session was set up; null without one.</param>
/// <param name="Last">When the last session was set up; null without one.</param>
/// <param name="Drills">The drills, most shots first, at most <see cref="MostDrills"/>.</param>
/// <param name="MoreDrills">Drills beyond those.</param>
public sealed record ReportWork(
    int Sessions, int Visits, int Shots, DateTimeOffset? First, DateTimeOffset? Last, ValueList<DrillWork> Drills, int MoreDrills)
{
    /// <summary>At most so many drills are named.</summary>
    public const int MostDrills = 5;
}
