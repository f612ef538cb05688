namespace AimTrainer.Setup;

/// <summary>A display that a user asks for.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Monitor">The monitor's number or name; null to take one that is free.</param>
/// <param name="Windowed">Whether it is to be an ordinary window.</param>
internal sealed record DisplayWish(DisplayKind Kind, string? Monitor, bool Windowed)
{
    /// <summary>What stands in the window's title and before what is said of it.</summary>
    public string Title => Kind == DisplayKind.Projector ? "AimTrainer projector" : "AimTrainer overhead screen";
}
