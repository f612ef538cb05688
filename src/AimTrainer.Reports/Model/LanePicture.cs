using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The newest shots on the lane.</summary>
/// <param name="Shots">How many shots are in it.</param>
/// <param name="AllShots">How many there are in the period.</param>
/// <param name="Targets">The places they were thrown at, those with most known crossings first.</param>
/// <param name="Marks">The lane's own marks.</param>
public sealed record LanePicture(int Shots, int AllShots, ValueList<LaneTarget> Targets, ValueList<LaneMark> Marks)
{
    /// <summary>At most so many shots, the newest: memory and picture stay bounded.</summary>
    public const int MostShots = 300;

    /// <summary>At most so many places are drawn; the others are counted.</summary>
    public const int MostDrawn = 6;

    /// <summary>The target with most known crossings; of equals the one thrown at last. Null without a shot.</summary>
    public LaneTarget? Main => Targets.Count == 0 ? null : Targets[0];
}
