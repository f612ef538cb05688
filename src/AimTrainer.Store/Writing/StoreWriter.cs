using System.Data.Common;
using System.Threading.Channels;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

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

    private readonly RecordDatabase _database;
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

    private StepStatements? _statements;
    private StepKeeper? _keeper;
    private int _stepsSinceTidied;
    private bool _failedBefore;

    /// <summary>Starts it.</summary>
    /// <param name="database">The database, with its tables.</param>
    public StoreWriter(RecordDatabase database)
    {
        _database = database;
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
            throw new ObjectDisposedException(nameof(StoreWriter));
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
            TidyWhenDue();
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
            Open();
            switch (work)
            {
                case Work.NewSession session:
                    _statements!.Change(record => NewSessions.Add(record, session), session.Setup.SessionId);
                    break;
                case Work.Erasure erasure:
                    _statements!.Change(erasure.Erase, null);
                    _sessions.Clear();
                    if (erasure.LeavesTraces)
                    {
                        _database.AfterErasure(_statements);
                    }

                    break;
                case Work.Ball ball:
                    _statements!.Change(record => BallChanges.Keep(record, ball.Details), null);
                    break;
                case Work.Surface surface:
                    _statements!.Change(record => surface.IsKnown = BallChanges.Add(record, surface), null);
                    break;
                default:
                    throw new InvalidOperationException($"unknown work {work.GetType().Name}");
            }

            _failedBefore = false;
            work.Kept();
        }
        catch (InvalidOperationException exception) when (!_database.IsWorlds(exception))
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
            var keeper = Open();
            _statements!.Begin();
            foreach (var step in steps)
            {
                if (WhyNotNext(keeper, step, out var session) is { } why)
                {
                    refused.Add((step, why));
                }
                else
                {
                    keeper.Keep(session!, step);
                }
            }

            _statements.Commit();
        }
        catch (Exception exception) when (_database.IsRefusedRow(exception) && steps.Count > 1)
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
        _stepsSinceTidied += steps.Count;
        foreach (var (step, why) in refused)
        {
            step.NotKept(new InvalidOperationException(why));
        }

        // A refused step keeps its refusal.
        steps.ForEach(step => step.Kept());
    }

    private string? WhyNotNext(StepKeeper keeper, Work.Step step, out SessionCursor? session)
    {
        if (!_sessions.TryGetValue(step.SessionId, out session))
        {
            session = keeper.FindSession(step.SessionId);
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
        if (!RollBack() || _failedBefore || !_database.KeepsConnectionAfter(exception))
        {
            Close();
        }

        _failedBefore = true;
        if (exception is StoreUnavailableException)
        {
            return exception;
        }

        return _database.IsRefusedRow(exception) ? new InvalidOperationException($"the record refuses this: {exception.Message}", exception)
            : _database.IsWorlds(exception) ? _database.Unavailable(exception)
            : exception;
    }

    private bool RollBack()
    {
        _sessions.Clear();
        try
        {
            _statements?.RollBack();
            return true;
        }
        catch (DbException)
        {
            // Closing the connection takes back the rest.
            Close();
            return false;
        }
    }

    private StepKeeper Open()
    {
        _statements ??= _database.Open();
        return _keeper ??= new StepKeeper(_statements);
    }

    private void TidyWhenDue()
    {
        if (_statements is null)
        {
            return;
        }

        try
        {
            if (_database.Tidy(_statements, _stepsSinceTidied))
            {
                _stepsSinceTidied = 0;
            }
        }
        catch (DbException)
        {
            // Nothing is lost by it; the next one tries again.
            _stepsSinceTidied = 0;
        }
    }

    private void Close()
    {
        _sessions.Clear();
        _keeper = null;
        _statements?.Dispose();
        _statements = null;
    }

    private static void FailAll(List<Work.Step> steps, Exception exception) => steps.ForEach(step => step.NotKept(exception));
}
