using System.Buffers;

namespace AimTrainer.Display;

/// <summary>
/// How wide writing is at most, worked out without any font. The table holds, for each character, the greater advance width of the
/// program's own face (Inter Medium and Bold) and of a wide sans-serif (DejaVu Sans and its bold), read from the fonts' own tables and
/// rounded up; characters it does not hold count as the widest letter of Latin scripts.
/// </summary>
public static class TextRuler
{
    /// <summary>How far below the baseline a letter, comma or bracket reaches at most, in heights of a capital.</summary>
    public const double Descent = 0.3;

    /// <summary>How far above the baseline a letter reaches, accents included, in heights of a capital.</summary>
    public const double Ascent = 1.3;

    private const int First = ' ';
    private const double Elsewhere = 1.92;

    private static readonly SearchValues<char> Tall = SearchValues.Create("()[]{}|/\\@$bdfhklj");
    private static readonly SearchValues<char> Deep = SearchValues.Create("gjpqyQ,;()[]{}|_@$/\\");

    // Hundredths of a capital's height, for the characters from the blank to the tilde.
    private static ReadOnlySpan<byte> Regular =>
    [
        44, 55, 64, 115, 89, 131, 107, 38, 54, 54, 72, 115, 44, 64, 44, 51, 89, 88, 88, 89, 90, 88, 88, 88, 88, 88, 47, 47, 115, 115, 115, 73,
        138, 97, 95, 102, 106, 87, 81, 107, 104, 41, 76, 92, 78, 124, 103, 108, 88, 108, 96, 89, 90, 102, 97, 136, 94, 95, 94, 54, 51, 54, 115, 69,
        69, 85, 88, 79, 88, 85, 51, 88, 87, 39, 39, 80, 39, 134, 87, 84, 88, 88, 57, 74, 54, 87, 82, 114, 82, 82, 76, 88, 48, 88, 115,
    ];

    private static ReadOnlySpan<byte> Bold =>
    [
        48, 63, 72, 115, 96, 138, 120, 42, 63, 63, 78, 115, 53, 65, 53, 54, 96, 96, 96, 96, 96, 96, 96, 96, 96, 96, 55, 55, 115, 115, 115, 80,
        142, 107, 105, 104, 114, 94, 94, 113, 115, 52, 79, 107, 88, 137, 115, 117, 101, 117, 106, 99, 94, 112, 107, 152, 106, 100, 100, 63, 54, 63, 115, 69,
        69, 93, 99, 82, 99, 94, 60, 99, 98, 48, 48, 92, 48, 143, 98, 95, 99, 99, 68, 82, 66, 98, 90, 127, 89, 90, 80, 98, 52, 98, 115,
    ];

    /// <summary>How far a text reaches above its baseline, in heights of a capital: more than 1 with accents.</summary>
    public static double Above(string text) => text.Any(letter => letter > '~') ? Ascent : text.AsSpan().ContainsAny(Tall) ? 1.08 : 1.02;

    /// <summary>How far a text reaches below its baseline, in heights of a capital: more than a hair with g, j, p, q, y, commas and the like.</summary>
    public static double Below(string text) =>
        text.Any(letter => letter > '~') || text.AsSpan().ContainsAny(Deep) ? Descent : 0.03;

    /// <summary>The width of one line of text, in the unit of <paramref name="size"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">Height of a capital letter.</param>
    /// <param name="bold">Whether it is set bold.</param>
    public static double Width(string text, double size, bool bold)
    {
        var table = bold ? Bold : Regular;
        var width = 0.0;
        foreach (var letter in text.EnumerateRunes())
        {
            var index = letter.Value - First;
            width += index >= 0 && index < table.Length ? table[index] / 100.0 : Elsewhere;
        }

        return width * size;
    }
}
