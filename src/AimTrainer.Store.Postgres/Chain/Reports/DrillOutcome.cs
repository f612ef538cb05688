using AimTrainer.Analysis;

namespace AimTrainer.Store.Postgres;

/// <summary>What came of a drill for those who threw its test blocks in two sessions or more.</summary>
/// <param name="DrillId">The drill.</param>
/// <param name="People">How many; a bowler who was linked to nobody counts as one.</param>
/// <param name="Sessions">Their sessions with such blocks.</param>
/// <param name="FirstMissBoards">Mean size of the miss in the first of each one's, averaged over people.</param>
/// <param name="LastMissBoards">In the last.</param>
/// <param name="ChangeBoards">Last less first, averaged over people, with its limits by Student's t over people; below 0 is more accurate. Unknown below <see cref="Fewest"/> people.</param>
/// <param name="Better">The part of people whose last was smaller, with Wilson's limits.</param>
public sealed record DrillOutcome(
    string DrillId, int People, long Sessions, double? FirstMissBoards, double? LastMissBoards, BoundedEstimate ChangeBoards, BoundedEstimate Better)
{
    /// <summary>Fewest people from which a change is told.</summary>
    public const int Fewest = 5;

    /// <summary>What must stand beside every such figure.</summary>
    public const string Caution =
        "No group threw for comparison: who begins on a bad day looks better later whatever was practised, and those who stayed may not be like those who left.";
}
