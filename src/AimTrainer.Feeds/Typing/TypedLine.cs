using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>What a line typed at the terminal is.</summary>
public abstract record TypedLine
{
    /// <summary>Nothing but spaces.</summary>
    public sealed record Empty : TypedLine;

    /// <summary>A shot.</summary>
    public sealed record Throw(Shot Shot) : TypedLine;

    /// <summary>Words for somebody else: the line begins with a letter or a colon.</summary>
    public sealed record Command(string Text) : TypedLine;

    /// <summary>Neither.</summary>
    /// <param name="Found">What is wrong.</param>
    /// <param name="Allowed">What may be typed.</param>
    public sealed record Wrong(string Found, string Allowed) : TypedLine;
}
