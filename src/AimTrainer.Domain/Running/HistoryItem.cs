namespace AimTrainer.Domain;

/// <summary>One thing of a session's past that a later void or correction may have to be worked out from again.</summary>
internal abstract record HistoryItem(int Run)
{
    /// <summary>A shot that was thrown, the aim of its block that it was thrown at, and the visit of a walk to its place.</summary>
    internal sealed record Thrown(GradedShot Shot, int Aim, int Visit) : HistoryItem(Shot.Run);

    /// <summary>A width that was set by hand.</summary>
    internal sealed record WidthSet(int Run, int Slot, BoardOffset Width) : HistoryItem(Run);
}
