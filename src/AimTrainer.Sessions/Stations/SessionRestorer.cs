using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Puts an interrupted session together again: its inputs are followed once more, and must lead to the events that were kept.</summary>
internal static class SessionRestorer
{
    public static async Task<RestoredSession> RestoreAsync(StoredSession stored, ISessionStore store, CancellationToken cancellationToken)
    {
        var id = stored.Setup.SessionId;
        var read = DrillReader.Read($"drill of session {id}", Encoding.UTF8.GetBytes(stored.DrillJson));
        if (read.Value is not { } drill)
        {
            return new RestoredSession(null, $"session {id} cannot go on: this version does not read its drill ({read.Problems[0]}); its record stays as it is");
        }

        var opening = SessionCore.Open(stored.Setup, drill);
        if (opening.State is not { } state)
        {
            return new RestoredSession(null, $"session {id} cannot go on: {string.Join("; ", opening.Problems)}; its record stays as it is");
        }

        var session = new SessionInProgress(state);
        await foreach (var entry in store.ReadLogAsync(id, cancellationToken).ConfigureAwait(false))
        {
            if (entry.Sequence != session.Sequence + 1)
            {
                return new RestoredSession(
                    null, $"session {id} cannot go on: step {session.Sequence + 1} of its log is missing; its record stays as it is, start a new session");
            }

            var step = SessionCore.Apply(session.State, entry.Input);
            if (step.Refusal is not null || AsJson(step.Events) != AsJson(entry.Events))
            {
                return new RestoredSession(
                    null,
                    $"session {id} cannot go on: step {entry.Sequence} was worked out otherwise by the version that kept it; "
                    + "its record stays as it is, start a new session");
            }

            session.Accept(entry, step.State);
        }

        return new RestoredSession(session, null);
    }

    private static string AsJson(ValueList<SessionEvent> events) => JsonSerializer.Serialize(events, DomainJson.Options);
}
