using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

/// <summary>A store in memory that can be held back, or made to fail.</summary>
internal sealed class MemoryStore : ISessionStore
{
    private readonly ConcurrentDictionary<string, (StoredSession Session, ConcurrentQueue<string> Log)> _sessions = new();
    private volatile TaskCompletionSource? _held;

    /// <summary>What every write throws; null lets it through.</summary>
    public Exception? Failure { get; set; }

    /// <summary>Completes when a write has reached the held store.</summary>
    public TaskCompletionSource Reached { get; private set; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public void Hold() => _held = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public void Release()
    {
        var held = _held;
        _held = null;
        held?.SetResult();
    }

    public IReadOnlyList<LogEntry> Log(string id = "session-1") =>
        [.. _sessions[id].Log.Select(json => JsonSerializer.Deserialize<LogEntry>(json, DomainJson.Options)!)];

    public StoredSession Session(string id = "session-1") => _sessions[id].Session;

    /// <summary>Puts other steps in the place of what was kept.</summary>
    public void Replace(string id, IEnumerable<LogEntry> log) =>
        _sessions[id] = (_sessions[id].Session, new(log.Select(entry => JsonSerializer.Serialize(entry, DomainJson.Options))));

    public Task CreateAsync(SessionSetup setup, DrillSource drill, CancellationToken cancellationToken)
    {
        if (Failure is { } failure)
        {
            return Task.FromException(failure);
        }

        return _sessions.TryAdd(setup.SessionId, (new StoredSession(setup, drill.Json, false), new()))
            ? Task.CompletedTask : Task.FromException(new InvalidOperationException($"there is a session {setup.SessionId}"));
    }

    public async Task AppendAsync(string sessionId, LogEntry entry, CancellationToken cancellationToken)
    {
        if (_held is { } held)
        {
            Reached.TrySetResult();
            await held.Task.WaitAsync(cancellationToken);
        }

        if (Failure is { } failure)
        {
            throw failure;
        }

        var log = _sessions[sessionId].Log;
        if (entry.Sequence != log.Count + 1)
        {
            throw new InvalidOperationException($"step {entry.Sequence} after {log.Count}");
        }

        log.Enqueue(JsonSerializer.Serialize(entry, DomainJson.Options));
    }

    public Task<StoredSession?> FindAsync(string sessionId, CancellationToken cancellationToken) =>
        Task.FromResult(_sessions.TryGetValue(sessionId, out var found) ? found.Session : null);

    public async IAsyncEnumerable<LogEntry> ReadLogAsync(string sessionId, long after, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        foreach (var entry in Log(sessionId).Where(entry => entry.Sequence > after))
        {
            cancellationToken.ThrowIfCancellationRequested();
            yield return entry;
        }

        await Task.CompletedTask;
    }

    public Task<ValueList<SessionListing>> ListAsync(SessionFilter filter, CancellationToken cancellationToken) =>
        Task.FromResult(ValueList<SessionListing>.Empty);

    public Task<BowlerRecord?> FindBowlerAsync(string name, CancellationToken cancellationToken) => Task.FromResult<BowlerRecord?>(null);

    public Task<ValueList<BowlerListing>> ListBowlersAsync(int most, CancellationToken cancellationToken) =>
        Task.FromResult(ValueList<BowlerListing>.Empty);
}
