namespace AimTrainer.Display;

/// <summary>A set of colours for every display. Data: see <c>docs/displays.md</c> for how to write one.</summary>
/// <param name="Id">Name for settings: lower-case letters, digits and hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Lane">For projectors.</param>
/// <param name="Screen">For screens.</param>
public sealed record Theme(string Id, string Name, LanePalette Lane, ScreenPalette Screen);
