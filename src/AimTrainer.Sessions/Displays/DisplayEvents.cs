namespace AimTrainer.Sessions;

/// <summary>The names of the events of a display's stream.</summary>
public static class DisplayEvents
{
    /// <summary>First, once: <see cref="DisplayHello"/>.</summary>
    public const string Hello = "hello";

    /// <summary>Then, and whenever it changes, before anything else: <see cref="ProjectionState"/>.</summary>
    public const string Projection = "projection";

    /// <summary>What is new: <see cref="DisplayUpdate"/>.</summary>
    public const string Update = "update";

    /// <summary>Nothing new, but the line holds.</summary>
    public const string Beat = "beat";

    /// <summary>Last, when the display may no longer look: <see cref="DisplayEnd"/>.</summary>
    public const string End = "end";
}
