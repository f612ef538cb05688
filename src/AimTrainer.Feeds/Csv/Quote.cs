using System.Globalization;
using System.Text;

namespace AimTrainer.Feeds;

/// <summary>Shows what was found in a file, short and on one line.</summary>
internal static class Quote
{
    private const int Longest = 60;

    /// <summary>The text in quotation marks; control characters as their code; cut after 60 characters.</summary>
    public static string Of(ReadOnlySpan<char> text)
    {
        var shown = new StringBuilder("\"");
        foreach (var character in text[..Math.Min(text.Length, Longest)])
        {
            _ = char.IsControl(character) || char.IsSurrogate(character)
                ? shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)character:x4}")
                : shown.Append(character);
        }

        shown.Append('"');
        return text.Length > Longest ? shown.Append(CultureInfo.InvariantCulture, $" and {text.Length - Longest} more characters").ToString() : shown.ToString();
    }
}
