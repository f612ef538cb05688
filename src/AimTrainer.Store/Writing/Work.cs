using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>Something to be kept, and whoever waits for it.</summary>
internal abstract class Work
{
    private readonly TaskCompletionSource _done = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done when it is on the disk.</summary>
    public Task Done => _done.Task;

    /// <summary>It is on the disk.</summary>
    public void Kept() => _done.TrySetResult();

    /// <summary>It was not kept.</summary>
    public void NotKept(Exception why) => _done.TrySetException(why);

    /// <summary>A new session.</summary>
    public sealed class NewSession(SessionSetup setup, string setupJson, DrillSource drill) : Work
    {
        public SessionSetup Setup => setup;

        public string SetupJson => setupJson;

        public DrillSource Drill => drill;

        /// <exception cref="ArgumentException">The setup names another drill than the one given, or no bowler.</exception>
        public static NewSession Of(SessionSetup setup, DrillSource drill)
        {
            ArgumentException.ThrowIfNullOrWhiteSpace(setup.Bowler, nameof(setup));
            if (setup.DrillHash != drill.Hash || setup.DrillId != drill.Script.Id)
            {
                throw new ArgumentException(
                    $"the setup is for drill {setup.DrillId} ({setup.DrillHash}), not {drill.Script.Id} ({drill.Hash})", nameof(setup));
            }

            return new NewSession(setup, JsonSerializer.Serialize(setup, DomainJson.Options), drill);
        }
    }

    /// <summary>Rows that are to go for good.</summary>
    public sealed class Erasure(ErasureScope scope, Action<ValueList<string>> beforeCommit) : Work
    {
        /// <summary>What went; set before it is done.</summary>
        public ErasedRows Rows { get; private set; } = ErasedRows.None;

        /// <summary>Whether the files are to be seen to: also when no row went, but an earlier erasure may not have come to its end.</summary>
        public bool LeavesTraces => Rows.Any || scope is ErasureScope.Again;

        /// <summary>Does it in the transaction that the context is in.</summary>
        public void Erase(RecordContext record)
        {
            Rows = RowErasing.Erase(record, scope);
            if (Rows.Any)
            {
                beforeCommit(Rows.Sessions);
            }
        }
    }

    /// <summary>A step of a session.</summary>
    public sealed class Step(string sessionId, LogEntry entry, string inputJson, string eventsJson) : Work
    {
        public string SessionId => sessionId;

        public LogEntry Entry => entry;

        public string InputJson => inputJson;

        public string EventsJson => eventsJson;

        /// <summary>Written as JSON here, on the sender's thread, so that the one writer need not.</summary>
        public static Step Of(string sessionId, LogEntry entry) => new(
            sessionId, entry, JsonSerializer.Serialize(entry.Input, DomainJson.Options), JsonSerializer.Serialize(entry.Events, DomainJson.Options));
    }

    /// <summary>What is known of a ball.</summary>
    public sealed class Ball(BallDetails details) : Work
    {
        public BallDetails Details => details;

        /// <exception cref="ArgumentException">There is no bowler, or no name.</exception>
        public static Ball Of(BallDetails details)
        {
            ArgumentException.ThrowIfNullOrWhiteSpace(details.Bowler, nameof(details));
            ArgumentException.ThrowIfNullOrWhiteSpace(details.Name, nameof(details));
            return new Ball(details);
        }
    }

    /// <summary>An entry in the history of a ball's surface.</summary>
    public sealed class Surface(string bowler, string ball, BallSurface entry) : Work
    {
        public string Bowler => bowler;

        public string BallName => ball;

        public BallSurface Entry => entry;

        /// <summary>Whether there was such a ball; set before it is done.</summary>
        public bool IsKnown { get; set; }

        /// <exception cref="ArgumentException">There is no bowler, or no ball.</exception>
        public static Surface Of(string bowler, string ball, BallSurface entry)
        {
            ArgumentException.ThrowIfNullOrWhiteSpace(bowler);
            ArgumentException.ThrowIfNullOrWhiteSpace(ball);
            return new Surface(bowler, ball, entry);
        }
    }
}
