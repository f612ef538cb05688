namespace AimTrainer.Feeds;

/// <summary>Where a cell lies in the text, without its quotes.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="Length">How many.</param>
/// <param name="HoldsQuotes">Whether doubled quotes stand in it for single ones.</param>
internal readonly record struct CsvCell(int Start, int Length, bool HoldsQuotes);
