namespace AimTrainer.Domain;

/// <summary>A target or a line as a drill describes it, before it is known who bowls where.</summary>
/// <param name="Name">Its name, one of a kind within the block; for a single target also the target's name.</param>
/// <param name="Targets">One target, or the targets of a line, nearest first as far as the drill can know.</param>
public sealed record AimPlan(string Name, ValueList<TargetPlan> Targets);
