namespace AimTrainer.Browser.Tests;

/// <summary>A device by its size in CSS pixels.</summary>
internal sealed record Screen(string Name, int Width, int Height, bool Touch)
{
    public static Screen Phone { get; } = new("phone", 360, 740, Touch: true);

    public static Screen Tablet { get; } = new("tablet", 1024, 768, Touch: true);

    public static Screen Desk { get; } = new("desk", 1280, 800, Touch: false);

    public static Screen Named(string name) => name == "phone" ? Phone : name == "tablet" ? Tablet : Desk;
}
