namespace AimTrainer.Sessions;

/// <summary>
/// Keeps a text from being a formula where a CSV file is opened in a spreadsheet: an apostrophe before it, which a spreadsheet shows
/// or hides but never works out, and which our own reader takes away again.
/// </summary>
/// <remarks>
/// A cell is taken for a formula by its first character: equals, plus, minus, at, a tab or a line end before one, and the wide forms
/// of the first four. Source: OWASP, "CSV Injection" (the characters and the apostrophe); common practice for the wide forms.
/// </remarks>
public static class FormulaGuard
{
    private const string Starts = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    /// <summary>The text as it may stand in a cell.</summary>
    public static string Guarded(string text) => NeedsIt(text) ? $"'{text}" : text;

    /// <summary>The text that a cell was made from.</summary>
    public static string Plain(string cell) => cell.StartsWith('\'') && NeedsIt(cell[1..]) ? cell[1..] : cell;

    /// <summary>Apostrophes and blanks before such a character count too: taking one away must give back exactly what was written.</summary>
    private static bool NeedsIt(string text) => text.AsSpan().TrimStart("' ") is [var first, ..] && Starts.Contains(first, StringComparison.Ordinal);
}
