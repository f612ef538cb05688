using System.Runtime.CompilerServices;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>A shot file as a feed: it ends where the file ends.</summary>
/// <param name="path">The file.</param>
/// <param name="settings">Lane, hand, mapping.</param>
public sealed class CsvFileFeed(string path, CsvSettings settings) : IShotFeed
{
    /// <inheritdoc/>
    public string Name => path;

    /// <inheritdoc/>
    public async IAsyncEnumerable<FeedItem> ReadAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        // The file is read where it lies: a shot file is local and small, and an await a row costs more than the row.
        foreach (var item in Read())
        {
            cancellationToken.ThrowIfCancellationRequested();
            yield return item;
        }

        await Task.CompletedTask.ConfigureAwait(false);
    }

    /// <summary>The same without waiting, for whoever reads a whole file at once.</summary>
    public IEnumerable<FeedItem> Read()
    {
        using var stream = Open(out var failure);
        if (stream is null)
        {
            yield return failure!;
            yield break;
        }

        foreach (var item in CsvShots.Read(stream, path, settings))
        {
            yield return item;
        }
    }

    private FileStream? Open(out FeedItem? failure)
    {
        failure = null;
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1, FileOptions.SequentialScan);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            failure = new FeedItem.Unreadable(CsvText.Failed(path, exception));
            return null;
        }
    }
}
