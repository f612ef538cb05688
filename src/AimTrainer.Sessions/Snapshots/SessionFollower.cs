using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Puts a session together from its log, step by step: its inputs are followed once more, and must lead to the events that were kept.
/// So a process that only reads the record has the same pictures as the one that runs the session. For one thread at a time.
/// </summary>
public sealed class SessionFollower
{
    private SessionFollower(SessionInProgress session) => Session = session;

    /// <summary>The sequence of the last step taken; 0 before the first.</summary>
    public long Sequence => Session.Sequence;

    /// <summary>The session after that step.</summary>
    public SessionSnapshot Snapshot => Session.Picture();

    internal SessionInProgress Session { get; }

    /// <summary>Begins before the first step.</summary>
    /// <returns>The follower, or why this version cannot follow the session.</returns>
    public static (SessionFollower? Follower, string? Problem) Open(StoredSession stored)
    {
        var read = DrillReader.Read($"drill of session {stored.Setup.SessionId}", Encoding.UTF8.GetBytes(stored.DrillJson));
        if (read.Value is not { } drill)
        {
            return (null, $"this version does not read its drill ({read.Problems[0]})");
        }

        var opening = SessionCore.Open(stored.Setup, drill);
        return opening.State is { } state
            ? (new SessionFollower(new SessionInProgress(state)), null)
            : (null, string.Join("; ", opening.Problems));
    }

    /// <summary>Takes the next step.</summary>
    /// <returns>Null, or why it cannot be followed: nothing was taken.</returns>
    public string? Take(LogEntry entry)
    {
        if (entry.Sequence != Session.Sequence + 1)
        {
            return $"step {Session.Sequence + 1} of its log is missing";
        }

        var step = SessionCore.Apply(Session.State, entry.Input);
        if (step.Refusal is not null || AsJson(step.Events) != AsJson(entry.Events))
        {
            return $"step {entry.Sequence} was worked out otherwise by the version that kept it";
        }

        Session.Accept(entry, step.State);
        return null;
    }

    private static string AsJson(ValueList<SessionEvent> events) => JsonSerializer.Serialize(events, DomainJson.Options);
}
