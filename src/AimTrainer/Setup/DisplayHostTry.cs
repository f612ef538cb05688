namespace AimTrainer.Setup;

/// <summary>How a try to follow a host ended.</summary>
internal abstract record DisplayHostTry(string Why)
{
    /// <summary>The host does not answer, or no longer: it is tried again soon.</summary>
    public sealed record Lost(string Why) : DisplayHostTry(Why);

    /// <summary>The host does not let this display look.</summary>
    public sealed record NotAllowed(string Why) : DisplayHostTry(Why);

    /// <summary>Host and display do not understand each other.</summary>
    public sealed record Differs(string Why) : DisplayHostTry(Why);
}
