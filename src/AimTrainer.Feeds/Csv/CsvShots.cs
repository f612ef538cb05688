using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>Reads shot files: comma-separated text (RFC 4180) with the headings of <c>docs/shots.md</c>, or others by a mapping.</summary>
/// <remarks>
/// What is wrong comes as <see cref="FeedItem.Unreadable"/> among the shots, all that is wrong with a row at once, and the rest
/// goes on; nothing is thrown for it. Memory stays bounded by the longest row allowed, 1 Mi characters.
/// </remarks>
public static class CsvShots
{
    /// <summary>Reads a stream: UTF-8, or UTF-16 with a byte order mark. It is not closed.</summary>
    /// <param name="stream">The bytes.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="settings">Lane, hand, mapping.</param>
    public static IEnumerable<FeedItem> Read(Stream stream, string fileName, CsvSettings settings) =>
        Read(CsvText.Reader(stream), fileName, settings);

    /// <summary>Reads text. It is not closed.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="settings">Lane, hand, mapping.</param>
    public static IEnumerable<FeedItem> Read(TextReader text, string fileName, CsvSettings settings)
    {
        var parser = new CsvShotParser(fileName, settings);
        var final = false;
        FileProblem? failure = null;
        while (true)
        {
            while (parser.Next(final) is { } item)
            {
                yield return item;
            }

            if (failure is not null)
            {
                yield return new FeedItem.Unreadable(failure);
            }

            if (final || parser.GaveUp)
            {
                yield break;
            }

            final = !Fill(text, parser.Rows, fileName, out failure);
        }
    }

    private static bool Fill(TextReader text, CsvRows rows, string fileName, out FileProblem? failure)
    {
        failure = null;
        try
        {
            var count = text.Read(rows.Free());
            rows.Added(count);
            return count > 0;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            failure = CsvText.Failed(fileName, exception);
            return false;
        }
    }
}
