namespace AimTrainer.Domain;

/// <summary>A block of a drill for one bowler on one lane: every target has its board and distance.</summary>
/// <param name="Block">As the drill says it.</param>
/// <param name="Aims">Its aims in the drill's order; a walk's one aim at its start.</param>
/// <param name="WalkPlaces">A walk's aim at each of its places; empty when nothing walks.</param>
public sealed record ResolvedBlock(DrillBlock Block, ValueList<ResolvedAim> Aims, ValueList<ResolvedAim> WalkPlaces)
{
    /// <summary>The targets of an aim, for a walk at one of its places.</summary>
    internal ValueList<ResolvedTarget> TargetsOf(int aim, int place) => WalkPlaces.Count > 0 ? WalkPlaces[place].Targets : Aims[aim].Targets;

    /// <summary>The number of the first target slot of an aim: slots count the targets of all aims, in the drill's order.</summary>
    internal int FirstSlot(int aim)
    {
        var slot = 0;
        for (var i = 0; i < aim; i++)
        {
            slot += Aims[i].Targets.Count;
        }

        return slot;
    }

    /// <summary>The plan of a target slot.</summary>
    internal TargetPlan PlanOfSlot(int slot)
    {
        var aim = 0;
        while (slot >= FirstSlot(aim) + Aims[aim].Targets.Count)
        {
            aim++;
        }

        return Block.Aims[aim].Targets[slot - FirstSlot(aim)];
    }
}
