using System.CommandLine;
using AimTrainer.Display;

namespace AimTrainer.Setup;

/// <summary>The options by which a session opens its own displays.</summary>
internal sealed class DisplayOptions
{
    public Option<string?> Projector { get; } = Monitor(
        "--projector", "Also light the lane, with the projector that is this monitor (see: monitors); without MONITOR the first one beside the primary.");

    public Option<string?> Overhead { get; } = Monitor(
        "--overhead", "Also show the screen above the lane, on this monitor (see: monitors); without MONITOR the first free one beside the primary.");

    public Option<bool> Windowed { get; } = new("--windowed") { Description = "Show displays in ordinary windows instead." };

    public Option<string?> Theme { get; } = OfTheme();

    public IEnumerable<Option> All => [Projector, Overhead, Windowed, Theme];

    public static Option<string?> OfTheme() => new("--theme")
    {
        Description = $"Colours of the displays: {string.Join(", ", ThemeLibrary.Own.AsEnumerable().Select(theme => theme.Id))}, or a theme file (docs/displays.md).",
        HelpName = "NAME|FILE",
    };

    /// <summary>The displays asked for.</summary>
    public IReadOnlyList<DisplayWish> Wishes(ParseResult parsed)
    {
        var wishes = new List<DisplayWish>();
        foreach (var (option, kind) in new[] { (Projector, DisplayKind.Projector), (Overhead, DisplayKind.Overhead) })
        {
            if (parsed.GetResult(option) is not null)
            {
                wishes.Add(new DisplayWish(kind, parsed.GetValue(option), parsed.GetValue(Windowed)));
            }
        }

        return wishes;
    }

    private static Option<string?> Monitor(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "MONITOR",
        Arity = ArgumentArity.ZeroOrOne,
    };
}
