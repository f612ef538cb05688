using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Reads a theme from JSON. The format is told in <c>docs/displays.md</c>.</summary>
public static class ThemeReader
{
    private const int Format = 1;

    /// <summary>Reads a theme, or everything that is wrong with it: colours that are too alike are wrong too.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<Theme> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var theme = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? ThemeOf(file, reader) : null;
        return new FileRead<Theme>(file.HasProblems ? null : theme, file.Problems);
    }

    private static Theme? ThemeOf(JsonFile file, ObjectReader reader)
    {
        reader.OptionalText("$schema", 500);
        reader.Whole("format", Format, Format);
        var id = Id(reader);
        var name = reader.Text("name", 40);
        var (laneReader, screenReader) = (reader.Object("lane"), reader.Object("screen"));
        var lane = laneReader is null ? null : Lane(laneReader);
        var screen = screenReader is null ? null : Screen(screenReader);
        reader.Done();
        if (file.HasProblems)
        {
            return null;
        }

        var theme = new Theme(id!, name!, lane!, screen!);
        foreach (var fault in ThemeRules.FaultsOf(theme))
        {
            (fault.Palette == "lane" ? laneReader! : screenReader!).Report(fault.Colour, fault.Found, fault.Allowed);
        }

        return theme;
    }

    private static string? Id(ObjectReader reader)
    {
        var id = reader.Text("id", 40);
        if (id is not null && !id.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-'))
        {
            reader.Report("id", $"\"{id}\"", "lower-case letters, digits and hyphens");
        }

        return id;
    }

    // Every colour is asked for before any answer is used, so that one look finds everything that is wrong.
    private static LanePalette Lane(ObjectReader lane)
    {
        var palette = new LanePalette(
            Read(lane, "target"), Read(lane, "rim"), Read(lane, "next"), Read(lane, "path"), Read(lane, "hit"), Read(lane, "miss"), Read(lane, "trail"), Read(lane, "text"));
        lane.Done();
        return palette;
    }

    private static ScreenPalette Screen(ObjectReader screen)
    {
        var palette = new ScreenPalette(
            Read(screen, "ground"), Read(screen, "panel"), Read(screen, "text"), Read(screen, "quiet"), Read(screen, "lane"), Read(screen, "boards"),
            Read(screen, "mark"), Read(screen, "target"), Read(screen, "next"), Read(screen, "hit"), Read(screen, "miss"), Read(screen, "trail"));
        screen.Done();
        return palette;
    }

    private static Colour Read(ObjectReader palette, string name)
    {
        if (palette.Text(name, 80) is not { } text)
        {
            return default;
        }

        if (text.Length == 7 && text[0] == '#' && int.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
        {
            return new Colour((byte)(value >> 16), (byte)(value >> 8), (byte)value);
        }

        palette.Report(name, $"\"{text}\"", "a colour as #rrggbb, six hexadecimal digits");
        return default;
    }
}
