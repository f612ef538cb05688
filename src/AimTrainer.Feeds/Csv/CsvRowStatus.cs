namespace AimTrainer.Feeds;

/// <summary>What came of looking for the next row.</summary>
internal enum CsvRowStatus
{
    /// <summary>A whole row is there.</summary>
    Row,

    /// <summary>The row is not complete yet: more text is needed.</summary>
    NeedMore,

    /// <summary>Nothing is left.</summary>
    End,

    /// <summary>A quote was opened and not closed; the line on which it opened was dropped.</summary>
    UnclosedQuote,

    /// <summary>Something other than a delimiter follows a closing quote; the line was dropped.</summary>
    TextAfterQuote,

    /// <summary>The row is longer than <see cref="CsvRows.LongestRow"/>; it was dropped to the end of its line.</summary>
    TooLong,
}
