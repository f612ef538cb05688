using System.Text;

namespace AimTrainer.Display;

/// <summary>Makes words fit their room: names and titles come from people and files.</summary>
internal static class TextFit
{
    private const string More = "...";

    /// <summary>The first of some ways to say a thing that fits; when none does, the last one cut off.</summary>
    public static string First(double room, double size, bool bold, params ReadOnlySpan<string> ways)
    {
        foreach (var way in ways)
        {
            if (TextRuler.Width(way, size, bold) <= room)
            {
                return way;
            }
        }

        return Cut(ways[^1], room, size, bold);
    }

    /// <summary>The text, or as much of it as fits with three dots behind; without control characters.</summary>
    public static string Cut(string text, double room, double size, bool bold)
    {
        var clean = Clean(text);
        if (TextRuler.Width(clean, size, bold) <= room)
        {
            return clean;
        }

        var kept = new StringBuilder();
        foreach (var letter in clean.EnumerateRunes())
        {
            if (TextRuler.Width(kept.ToString() + letter + More, size, bold) > room)
            {
                break;
            }

            kept.Append(letter);
        }

        return kept.ToString().TrimEnd() + More;
    }

    /// <summary>The text in lines that fit, broken at blanks; a word that is too long for a line is cut off.</summary>
    public static IReadOnlyList<string> Lines(string text, double room, double size, bool bold)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in Clean(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (TextRuler.Width(longer, size, bold) <= room)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = Cut(word, room, size, bold);
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    private static string Clean(string text)
    {
        foreach (var letter in text)
        {
            if (char.IsControl(letter))
            {
                return string.Concat(text.Select(each => char.IsControl(each) ? ' ' : each));
            }
        }

        return text;
    }
}
