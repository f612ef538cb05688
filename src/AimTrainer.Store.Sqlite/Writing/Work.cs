using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store.Sqlite;

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
    }

    /// <summary>A step of a session.</summary>
    public sealed class Step(string sessionId, LogEntry entry, string inputJson, string eventsJson) : Work
    {
        public string SessionId => sessionId;

        public LogEntry Entry => entry;

        public string InputJson => inputJson;

        public string EventsJson => eventsJson;
    }

    /// <summary>What is known of a ball.</summary>
    public sealed class Ball(BallDetails details) : Work
    {
        public BallDetails Details => details;
    }

    /// <summary>An entry in the history of a ball's surface.</summary>
    public sealed class Surface(string bowler, string ball, BallSurface entry) : Work
    {
        public string Bowler => bowler;

        public string BallName => ball;

        public BallSurface Entry => entry;

        /// <summary>Whether there was such a ball; set before it is done.</summary>
        public bool IsKnown { get; set; }
    }
}
