using System.Text;
using System.Text.Json;

namespace AimTrainer.Domain;

/// <summary>Says in plain words what keeps a text from being JSON.</summary>
internal static class JsonSyntax
{
    private static ReadOnlySpan<byte> WordBytes => "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-+."u8;

    /// <summary>The place at which the reader gave up, in bytes.</summary>
    public static int OffsetOf(ReadOnlySpan<byte> text, JsonException wrong)
    {
        var offset = 0;
        for (var line = wrong.LineNumber ?? 0; line > 0; line--)
        {
            offset += text[offset..].IndexOf((byte)'\n') + 1;
        }

        return (int)Math.Min(offset + (wrong.BytePositionInLine ?? 0), text.Length);
    }

    /// <summary>What was found there, and what is allowed.</summary>
    public static (string Found, string Allowed) Describe(ReadOnlySpan<byte> text, int offset)
    {
        var rest = text[offset..];
        var before = text[..offset].TrimEnd(" \t\r\n"u8);
        if (rest.Trim(" \t\r\n"u8).IsEmpty)
        {
            return ("the end of the file", "a closing quote, ] or } for everything that was opened");
        }

        var word = Word(text, offset);
        var next = (char)rest[0];
        return next switch
        {
            _ when before.EndsWith("\\"u8) => ($"the escape \\{FoundText.Short(next.ToString())}", "\\\", \\\\, \\/, \\b, \\f, \\n, \\r, \\t, or \\u and four digits"),
            '/' => ("a comment", "no comments: delete it"),
            '}' or ']' when before.EndsWith(","u8) => ($"a comma before {next}", "no comma after the last value: delete it"),
            '\'' => ("a single quote", "double quotes \" around names and texts"),
            '\n' or '\r' => ("a line break inside a text", "a closing quote \" before the end of the line"),
            < ' ' => ("a control character inside a text", "its escape, such as \\t"),
            '"' => ($"{Start(rest)} right after another value", "a comma, colon or bracket between them"),
            _ when char.IsAsciiDigit(next) && before.EndsWith(","u8) => ($"a comma inside a number ({Number(before)}{Number(rest)})", "a decimal point"),
            _ when word is "NaN" or "Infinity" or "-Infinity" or "+Infinity" => (word, "a number"),
            _ when word.Length > 0 && rest[..Math.Min(rest.Length, 80)].TrimStart(WordBytes).TrimStart(" \t"u8).StartsWith(":"u8) =>
                (FoundText.Short(word), "a name in double quotes"),
            _ when word.Length > 0 => (FoundText.Short(word), "true, false, null, a number, or a text in double quotes"),
            _ => (Start(rest), "JSON: is a comma, colon, quote, bracket or digit missing or too many?"),
        };
    }

    private static string Start(ReadOnlySpan<byte> rest) =>
        FoundText.Short(Encoding.UTF8.GetString(rest[..Math.Min(rest.Length, 80)]).Split('\n')[0].TrimEnd());

    // The number that ends at a comma, with the comma, or that the text starts with.
    private static string Number(ReadOnlySpan<byte> text)
    {
        var isBefore = text.EndsWith(","u8);
        var number = isBefore
            ? text[(text[..^1].LastIndexOfAnyExceptInRange((byte)'0', (byte)'9') + 1)..]
            : text[..Math.Max(0, text.IndexOfAnyExceptInRange((byte)'0', (byte)'9'))];
        return FoundText.Short(Encoding.ASCII.GetString(number[..Math.Min(number.Length, 20)]));
    }

    // The bare word that the place lies in: the reader stops at its first letter, or at the first that it did not expect.
    private static string Word(ReadOnlySpan<byte> text, int offset)
    {
        var start = offset;
        while (start > 0 && IsWordByte(text[start - 1]))
        {
            start--;
        }

        var end = offset;
        while (end < text.Length && IsWordByte(text[end]))
        {
            end++;
        }

        var word = text[start..end];
        return word.IndexOfAnyInRange((byte)'A', (byte)'z') >= 0 && (start == 0 || text[start - 1] is not ((byte)'"' or (byte)'\\'))
            ? Encoding.ASCII.GetString(word[..Math.Min(word.Length, 80)])
            : "";
    }

    private static bool IsWordByte(byte value) => WordBytes.Contains(value);
}
