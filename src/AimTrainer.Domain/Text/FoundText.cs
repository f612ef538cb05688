using System.Globalization;
using System.Text;

namespace AimTrainer.Domain;

/// <summary>Puts what stands in somebody's file into a message: short, and with nothing in it that a terminal would obey.</summary>
public static class FoundText
{
    private const int Longest = 40;

    /// <summary>The text, cut and with control characters spelled out.</summary>
    public static string Short(string text)
    {
        var result = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (result.Length >= Longest)
            {
                return result.Append('…').ToString();
            }

            if (IsUnprintable(rune))
            {
                result.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:x4}");
            }
            else
            {
                result.Append(rune.ToString());
            }
        }

        return result.ToString();
    }

    /// <summary>The same between quotes.</summary>
    public static string Quoted(string text) => $"\"{Short(text)}\"";

    /// <summary>A member's name as a step of a JSON path.</summary>
    public static string PathPart(string name) =>
        name.Length is > 0 and <= Longest && name.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '_' or '$')
            ? "." + name
            : $"['{Short(name)}']";

    /// <summary>Whether a character shows nothing, or changes how others show.</summary>
    public static bool IsUnprintable(Rune rune) => Rune.GetUnicodeCategory(rune)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;
}
