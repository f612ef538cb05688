namespace AimTrainer.Domain;

/// <summary>An aim whose places are known.</summary>
/// <param name="Name">Its name in the drill.</param>
/// <param name="Targets">One target, or the targets of a line, nearest first.</param>
public sealed record ResolvedAim(string Name, ValueList<ResolvedTarget> Targets);
