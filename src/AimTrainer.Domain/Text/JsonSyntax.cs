using System.Text;
using System.Text.Json;

namespace AimTrainer.Domain;

/// <summary>Says in plain words what keeps a text from being JSON.</summary>
internal static class JsonSyntax
{
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
        return (char)rest[0] switch
        {
            '/' => ("a comment", "no comments: delete it"),
            '}' or ']' when before.EndsWith(","u8) => ($"a comma before {(char)rest[0]}", "no comma after the last value: delete it"),
            '\'' => ("a single quote", "double quotes \" around names and texts"),
            '\n' or '\r' => ("a line break inside a text", "a closing quote \" before the end of the line"),
            < ' ' => ("a control character inside a text", "its escape, such as \\t"),
            _ when word is "NaN" or "Infinity" or "-Infinity" or "+Infinity" => (word, "a number"),
            _ when word.Length > 0 => (FoundText.Short(word), "true, false, null, a number, or a text in double quotes"),
            _ => (FoundText.Quoted(Encoding.UTF8.GetString(rest[..Math.Min(rest.Length, 80)]).Split('\n')[0].TrimEnd()), "JSON: is a comma, colon, quote or bracket missing or too many?"),
        };
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

    private static bool IsWordByte(byte value) => char.IsAsciiLetterOrDigit((char)value) || value is (byte)'_' or (byte)'-' or (byte)'+' or (byte)'.';
}
