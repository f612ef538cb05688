using System.Collections.Concurrent;

namespace AimTrainer.Sessions;

/// <summary>Goes through a source on a thread of its own, a little ahead of whoever uses it: reading a file and grading its shots then overlap.</summary>
public static class ReadAhead
{
    private const int BatchLength = 256;
    private const int MostBatchesAhead = 16;

    /// <summary>
    /// The same items in the same order. The source may be far from an item that was taken by up to 16 batches of 256; when these
    /// are full, it waits. What it throws is thrown after the items before it. Once the enumerator is disposed of, the source is
    /// no longer in use.
    /// </summary>
    /// <typeparam name="T">What comes.</typeparam>
    /// <param name="source">What is gone through; not in use by anybody else.</param>
    public static IEnumerable<T> Of<T>(IEnumerable<T> source)
    {
        using var stop = new CancellationTokenSource();
        using var batches = new BlockingCollection<List<T>>(MostBatchesAhead);
        var reading = Task.Factory.StartNew(
            () => Read(source, batches, stop.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            foreach (var batch in batches.GetConsumingEnumerable())
            {
                foreach (var item in batch)
                {
                    yield return item;
                }
            }

            reading.GetAwaiter().GetResult();
        }
        finally
        {
            stop.Cancel();
            ((IAsyncResult)reading).AsyncWaitHandle.WaitOne();
        }
    }

    private static void Read<T>(IEnumerable<T> source, BlockingCollection<List<T>> batches, CancellationToken stop)
    {
        try
        {
            Fill(source, batches, stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Whoever used it wants no more.
        }
        finally
        {
            batches.CompleteAdding();
        }
    }

    private static void Fill<T>(IEnumerable<T> source, BlockingCollection<List<T>> batches, CancellationToken stop)
    {
        var batch = new List<T>(BatchLength);
        try
        {
            foreach (var item in source)
            {
                batch.Add(item);
                if (batch.Count == BatchLength)
                {
                    batches.Add(batch, stop);
                    batch = new List<T>(BatchLength);
                }
            }
        }
        finally
        {
            // What came before the source failed still comes.
            if (batch.Count > 0)
            {
                batches.Add(batch, stop);
            }
        }
    }
}
