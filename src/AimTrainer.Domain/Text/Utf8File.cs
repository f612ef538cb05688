using System.Globalization;
using System.Text.Unicode;

namespace AimTrainer.Domain;

/// <summary>Tells whether the bytes of a file are text that can be read, before anything tries to.</summary>
public static class Utf8File
{
    private const string SaveAsUtf8 = "text saved as UTF-8: open it in an editor and save it as UTF-8";

    /// <summary>Why the bytes cannot be read as text.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="mostBytes">How large the file may be.</param>
    /// <returns>What was found and what is allowed, or null when the bytes are UTF-8 text, with or without a byte order mark.</returns>
    public static (string Found, string Allowed)? Refusal(ReadOnlySpan<byte> bytes, int mostBytes)
    {
        if (bytes.Length > mostBytes)
        {
            return (Invariant($"a file of {bytes.Length} bytes"), Invariant($"at most {mostBytes} bytes"));
        }

        // UTF-32 first: its little-endian mark begins with that of UTF-16.
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0, 0]) || bytes.StartsWith((ReadOnlySpan<byte>)[0, 0, 0xFE, 0xFF])
            || LooksLike(bytes, [true, false, false, false]) || LooksLike(bytes, [false, false, false, true]))
        {
            return ("text saved as UTF-32", SaveAsUtf8);
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])
            || LooksLike(bytes, [true, false]) || LooksLike(bytes, [false, true]))
        {
            return ("text saved as UTF-16", SaveAsUtf8);
        }

        var text = WithoutMark(bytes);
        if (text.Trim(" \t\r\n"u8).IsEmpty)
        {
            return ("an empty file", "a JSON object between { and }");
        }

        if (text.Contains((byte)0))
        {
            return ("bytes that are no text (a picture, a program or the like)", SaveAsUtf8);
        }

        return Utf8.IsValid(text) ? null : (Invariant($"a byte that is not UTF-8 in line {LineOfFirstInvalid(text)}"), SaveAsUtf8);
    }

    /// <summary>The bytes without a UTF-8 byte order mark.</summary>
    public static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;

    // Text in a wide encoding without a mark: its first characters are ASCII, so every other byte, or three of four, are zero.
    private static bool LooksLike(ReadOnlySpan<byte> bytes, ReadOnlySpan<bool> filled)
    {
        if (bytes.Length < filled.Length * 2)
        {
            return false;
        }

        for (var i = 0; i < filled.Length * 2; i++)
        {
            if (bytes[i] != 0 != filled[i % filled.Length])
            {
                return false;
            }
        }

        return true;
    }

    private static int LineOfFirstInvalid(ReadOnlySpan<byte> text)
    {
        var line = 1;
        while (!text.IsEmpty)
        {
            var end = text.IndexOf((byte)'\n');
            var whole = end < 0 ? text : text[..(end + 1)];
            if (!Utf8.IsValid(whole))
            {
                return line;
            }

            line++;
            text = text[whole.Length..];
        }

        return line;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
