using System.Threading.Channels;
using AimTrainer.Sessions;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Store.Sqlite;

/// <summary>
/// The only thing that writes to the database: one thread, one connection. Whatever waits when it gets round to it goes into
/// one transaction, so that many stations share one flush of the disk.
/// </summary>
/// <remarks>The queue is bounded; when it is full, senders wait. Nothing is dropped.</remarks>
internal sealed class StoreWriter : IDisposable
{
    private const int MostWaiting = 1024;
    private const int MostTogether = 256;
    private const int MostRemembered = 4096;

    /// <summary>About 2000 pages of log, 8 MB: seldom enough to cost little, often enough to keep the log short.</summary>
    private const int StepsBetweenCheckpoints = 256;

    private readonly string _file;
    private readonly Action<SqliteConnection>? _onOpened;
    private readonly Thread _thread;
    private readonly Dictionary<string, SessionCursor> _sessions = [];

    // Continuations run at once: on the writer's side that is the end of a wait, on a sender's the few lines of KeepAsync. It
    // spares a shot the way through the thread pool.
    private readonly Channel<Work> _queue = Channel.CreateBounded<Work>(
        new BoundedChannelOptions(MostWaiting)
        {
            FullMode = BoundedChannelFullMode.Wait,
            SingleReader = true,
            AllowSynchronousContinuations = true,
        });

    private SqliteConnection? _connection;
    private StepCommands? _commands;
    private int _stepsSinceCheckpoint;
    private bool _failedBefore;

    /// <summary>Starts it.</summary>
    /// <param name="file">The database, with its tables.</param>
    /// <param name="onOpened">What else to do with each new connection; for tests.</param>
    public StoreWriter(string file, Action<SqliteConnection>? onOpened)
    {
        _file = file;
        _onOpened = onOpened;
        _thread = new Thread(Run) { Name = "record writer", IsBackground = true };
        _thread.Start();
    }

    /// <summary>Puts something on the disk.</summary>
    /// <param name="work">What.</param>
    /// <param name="cancellationToken">Ends the wait for a place in the queue; what is in the queue is always seen through.</param>
    public async Task KeepAsync(Work work, CancellationToken cancellationToken)
    {
        try
        {
            await _queue.Writer.WriteAsync(work, cancellationToken).ConfigureAwait(false);
        }
        catch (ChannelClosedException)
        {
            throw new ObjectDisposedException(nameof(SqliteSessionStore));
        }

        await work.Done.ConfigureAwait(false);
    }

    /// <summary>Takes nothing more, keeps what is waiting, and closes the database.</summary>
    public void Dispose()
    {
        if (_queue.Writer.TryComplete())
        {
            _thread.Join();
        }
    }

    private void Run()
    {
        var together = new List<Work>(MostTogether);
        while (WaitForWork())
        {
            together.Clear();
            while (together.Count < MostTogether && _queue.Reader.TryRead(out var work))
            {
                together.Add(work);
            }

            Keep(together);
            CheckpointWhenDue();
        }

        Close();
    }

    /// <summary>Blocks this thread, which has nothing else to do: a flush blocks it anyway, and the thread pool stays free.</summary>
    private bool WaitForWork()
    {
        var waiting = _queue.Reader.WaitToReadAsync();
        return waiting.IsCompletedSuccessfully ? waiting.Result : waiting.AsTask().GetAwaiter().GetResult();
    }

    private void Keep(List<Work> together)
    {
        var steps = new List<Work.Step>(together.Count);
        foreach (var work in together)
        {
            if (work is Work.Step step)
            {
                steps.Add(step);
                continue;
            }

            KeepSteps(steps);
            steps.Clear();
            KeepAlone(work);
        }

        KeepSteps(steps);
    }

    /// <summary>Keeps what is no step, in a transaction of its own.</summary>
    private void KeepAlone(Work work)
    {
        try
        {
            Commands();
            switch (work)
            {
                case Work.NewSession session:
                    NewSessions.Keep(_connection!, session);
                    break;
                case Work.Ball ball:
                    BallChanges.Keep(_connection!, ball.Details);
                    break;
                case Work.Surface surface:
                    surface.IsKnown = BallChanges.Add(_connection!, surface);
                    break;
                default:
                    throw new InvalidOperationException($"unknown work {work.GetType().Name}");
            }

            _failedBefore = false;
            work.Kept();
        }
        catch (InvalidOperationException exception)
        {
            work.NotKept(exception);
        }
        catch (Exception exception)
        {
            work.NotKept(AfterFailure(exception));
        }
    }

    private void KeepSteps(List<Work.Step> steps)
    {
        if (steps.Count == 0)
        {
            return;
        }

        var refused = new List<(Work.Step Step, string Why)>();
        try
        {
            var commands = Commands();
            commands.Begin();
            foreach (var step in steps)
            {
                if (WhyNotNext(commands, step, out var session) is { } why)
                {
                    refused.Add((step, why));
                }
                else
                {
                    commands.Keep(session!, step);
                }
            }

            commands.Commit();
        }
        catch (Exception exception) when (StoreFault.IsRefusedRow(exception) && steps.Count > 1)
        {
            // One step spoils it for all: take everything back and let each stand for itself.
            if (RollBack())
            {
                steps.ForEach(step => KeepSteps([step]));
                return;
            }

            FailAll(steps, AfterFailure(exception));
            return;
        }
        catch (Exception exception)
        {
            FailAll(steps, AfterFailure(exception));
            return;
        }

        _failedBefore = false;
        _stepsSinceCheckpoint += steps.Count;
        foreach (var (step, why) in refused)
        {
            step.NotKept(new InvalidOperationException(why));
        }

        // A refused step keeps its refusal.
        steps.ForEach(step => step.Kept());
    }

    private string? WhyNotNext(StepCommands commands, Work.Step step, out SessionCursor? session)
    {
        if (!_sessions.TryGetValue(step.SessionId, out session))
        {
            session = commands.FindSession(step.SessionId);
            if (session is null)
            {
                return $"there is no session \"{step.SessionId}\"";
            }

            if (_sessions.Count >= MostRemembered)
            {
                _sessions.Clear();
            }

            _sessions.Add(step.SessionId, session);
        }

        return step.Entry.Sequence == session.Sequence + 1
            ? null
            : FormattableString.Invariant(
                $"step {step.Entry.Sequence} of session \"{step.SessionId}\" is not the next one, which is {session.Sequence + 1}");
    }

    /// <summary>Takes everything back, and says to the waiting what happened.</summary>
    private Exception AfterFailure(Exception exception)
    {
        // At first the connection is kept: a flush that failed may yet reach the disk, and only this connection knows to
        // write over it. When it fails twice in a row, a fresh one may fare better (a drive that was away).
        if (!RollBack() || _failedBefore)
        {
            Close();
        }

        _failedBefore = true;
        if (exception is StoreUnavailableException)
        {
            return exception;
        }

        return StoreFault.IsRefusedRow(exception) ? new InvalidOperationException($"the record refuses this: {exception.Message}", exception)
            : StoreFault.IsWorlds(exception) ? StoreFault.For(_file, exception)
            : exception;
    }

    private bool RollBack()
    {
        _sessions.Clear();
        try
        {
            _commands?.RollBack();
            return true;
        }
        catch (SqliteException)
        {
            // Closing the connection takes back the rest.
            Close();
            return false;
        }
    }

    private StepCommands Commands()
    {
        if (_connection is null)
        {
            if (!File.Exists(_file))
            {
                throw new StoreUnavailableException(
                    $"{_file} is gone, so nothing is kept. Put it back, or restore the last backup (aimtrainer restore)");
            }

            _connection = SqliteDatabase.OpenForWriting(_file);
            _onOpened?.Invoke(_connection);
        }

        return _commands ??= new StepCommands(_connection);
    }

    /// <summary>
    /// Moves the log into the database file, after the waiting have been told: no shot waits for it unless it comes in meanwhile.
    /// </summary>
    private void CheckpointWhenDue()
    {
        if (_stepsSinceCheckpoint < StepsBetweenCheckpoints || _connection is null)
        {
            return;
        }

        _stepsSinceCheckpoint = 0;
        try
        {
            SqliteDatabase.Execute(_connection, "PRAGMA wal_checkpoint(PASSIVE)");
        }
        catch (SqliteException)
        {
            // Everything is safe in the log, which is only longer than it might be; the next one tries again.
        }
    }

    private void Close()
    {
        _sessions.Clear();
        _commands?.Dispose();
        _commands = null;
        _connection?.Dispose();
        _connection = null;
    }

    private static void FailAll(List<Work.Step> steps, Exception exception) => steps.ForEach(step => step.NotKept(exception));
}
