using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Store.Postgres;

/// <summary>A session of a delivery, read before anything is locked.</summary>
/// <param name="Id">The session.</param>
/// <param name="Delivered">As it came.</param>
/// <param name="Setup">Its setup; null when it did not come, or cannot be read.</param>
/// <param name="Events">The events of its steps, as far as they can be read.</param>
/// <param name="Problem">What cannot be read, and what to do; null when all can.</param>
internal sealed record ReadSession(string Id, DeliveredSession Delivered, SessionSetup? Setup, IReadOnlyList<ValueList<SessionEvent>> Events, string? Problem)
{
    /// <summary>Reads one.</summary>
    public static ReadSession Of(DeliveredSession delivered)
    {
        var events = new List<ValueList<SessionEvent>>();
        SessionSetup? setup = null;
        var what = "the setup";
        try
        {
            if (delivered.SetupJson is { } json)
            {
                setup = JsonSerializer.Deserialize<SessionSetup>(json, DomainJson.Options) ?? throw new JsonException("null");
                if (setup.SessionId != delivered.Id || string.IsNullOrWhiteSpace(setup.Bowler) || (delivered.Drill is { } drill && drill.Hash != setup.DrillHash))
                {
                    throw new JsonException("it is another session's, names no bowler, or another drill");
                }
            }

            for (var i = 0; i < delivered.Steps.Count; i++)
            {
                var step = delivered.Steps[i];
                what = FormattableString.Invariant($"step {step.Sequence}");
                if (step.Sequence != delivered.Steps[0].Sequence + i)
                {
                    throw new JsonException("it does not follow the one before it");
                }

                events.Add(JsonSerializer.Deserialize<ValueList<SessionEvent>>(step.EventsJson, DomainJson.Options) ?? throw new JsonException("null"));
            }

            return new ReadSession(delivered.Id, delivered, setup, events, null);
        }
        catch (JsonException exception)
        {
            return new ReadSession(
                delivered.Id, delivered, setup, events, $"{what} cannot be read here ({exception.Message.TrimEnd('.')}). Bring center and chain to the same version of aimtrainer");
        }
    }
}
