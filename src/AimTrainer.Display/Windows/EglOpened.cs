using System.Diagnostics.CodeAnalysis;

namespace AimTrainer.Display;

/// <summary>What opening an offscreen surface came to: the surface, or what is wrong and how to put it right.</summary>
/// <param name="Surface">The surface, whose context is current on the calling thread; null when it failed.</param>
/// <param name="Problem">One line for the user; null when it worked.</param>
public sealed record EglOpened(EglSurface? Surface, string? Problem)
{
    /// <summary>Whether there is a surface.</summary>
    [MemberNotNullWhen(true, nameof(Surface))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool Worked => Surface is not null;
}
