using System.Reflection;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// What one display elsewhere is sent: first whether projection is stopped, then the steps that it lacks, all in one event, and then
/// whatever is new. The steps come from the store: what is shown is what is kept.
/// </summary>
/// <param name="live">The station.</param>
/// <param name="kind">What the display is.</param>
/// <param name="known">The session that the display has already, and the last step of it.</param>
/// <param name="parts">What else it needs.</param>
internal sealed class DisplayStream(LiveStation live, ScreenKind kind, (string? Session, long Step) known, DisplayStreamParts parts) : IResult
{
    private const string Revoked = "This display's token was revoked.", NowNeeded = "The host wants a token of this display now.";

    private (string? Session, long Step) _sent = known;
    private bool _hasSent;
    private (string? Name, LaneTurns? Turns) _told;

    /// <summary>The host's version, for people.</summary>
    public static string Version { get; } = typeof(DisplayStream).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0";

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var token = Visitor.Of(httpContext)?.DisplayId;
        if (token is not null)
        {
            parts.Looking.Came(token);
        }

        try
        {
            await EventStream.RunAsync(httpContext, WriteAsync).ConfigureAwait(false);
        }
        finally
        {
            if (token is not null)
            {
                parts.Looking.Left(token);
            }
        }
    }

    private async Task WriteAsync(EventStream stream, CancellationToken left)
    {
        await SendAsync(stream, DisplayEvents.Hello, 0, new DisplayHello(DisplayHello.Spoken, Version, live.Station.Number, kind), left).ConfigureAwait(false);
        ProjectionState? told = null;
        var (picture, stops, revokes) = (0L, -1L, -1L);
        while (stream.Holds)
        {
            var heard = false;
            if (parts.Stop.State is var state && !ReferenceEquals(state, told))
            {
                told = state;
                await SendAsync(stream, DisplayEvents.Projection, 0, state, left).ConfigureAwait(false);
                heard = true;
            }

            if (live.Picture.Number > picture)
            {
                // Looked at before the log: a step that is kept in between wakes this reader again.
                var newest = live.Picture;
                picture = newest.Number;
                if (await SendNewsAsync(stream, picture, left).ConfigureAwait(false))
                {
                    heard = true;
                    parts.Meters.Delivered(parts.Clock.GetElapsedTime(newest.MadeAt), "display");
                }
            }

            if (!heard)
            {
                await stream.BeatAsync(left).ConfigureAwait(false);
            }

            using var over = CancellationTokenSource.CreateLinkedTokenSource(left);
            var stopped = parts.Stop.Changes.WaitAsync(stops, EventStream.BeatEvery, parts.Clock, over.Token);
            var revoked = parts.Tokens.Revoked.WaitAsync(revokes, EventStream.BeatEvery, parts.Clock, over.Token);
            var next = live.NextAsync(picture, EventStream.BeatEvery, parts.Clock, over.Token);
            await Task.WhenAny(stopped, revoked, next).ConfigureAwait(false);
            await over.CancelAsync().ConfigureAwait(false);
            await Task.WhenAll(stopped, revoked, next).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            left.ThrowIfCancellationRequested();
            (stops, revokes) = (stopped.IsCompletedSuccessfully ? stopped.Result : stops, revoked.IsCompletedSuccessfully ? revoked.Result : revokes);
        }

        await SendAsync(stream, DisplayEvents.End, 0, new DisplayEnd(stream.IsOfADisplay ? Revoked : NowNeeded), left).ConfigureAwait(false);
    }

    /// <returns>Whether there was any.</returns>
    private async Task<bool> SendNewsAsync(EventStream stream, long picture, CancellationToken left)
    {
        var snapshot = live.Station.Snapshot;
        if (snapshot.Setup is not { } setup)
        {
            if (_sent.Session is null && _hasSent)
            {
                return false;
            }

            (_sent, _hasSent) = ((null, 0), true);
            await SendAsync(stream, DisplayEvents.Update, picture, new DisplayUpdate(), left).ConfigureAwait(false);
            return true;
        }

        // A record that was restored has fewer steps than the display saw: then it gets all of them anew.
        var goesOn = _sent.Session == setup.SessionId && _sent.Step <= snapshot.Version;
        var after = goesOn ? _sent.Step : 0;
        var stored = goesOn ? null : await parts.Store.FindAsync(setup.SessionId, left).ConfigureAwait(false);
        var steps = new List<LogEntry>();
        await foreach (var entry in parts.Store.ReadLogAsync(setup.SessionId, after, left).ConfigureAwait(false))
        {
            if (entry.Sequence > snapshot.Version)
            {
                // Kept since then, and perhaps with another's turn after it: it comes with its own picture.
                break;
            }

            steps.Add(entry);
        }

        _sent = (setup.SessionId, steps.Count > 0 ? steps[^1].Sequence : after);
        var told = (snapshot.NameOnScreen, Turns: snapshot.Turns?.ForScreens());
        if (goesOn && steps.Count == 0 && _hasSent && told == _told)
        {
            return false;
        }

        // The first is sent even when nothing is new: then the display knows that what it has is the newest.
        (_hasSent, _told) = (true, told);
        var update = new DisplayUpdate
        {
            SessionId = setup.SessionId,
            Setup = stored?.Setup,
            DrillJson = stored?.DrillJson,
            Steps = steps.ToValueList(),
            NameOnScreen = told.NameOnScreen,
            Turns = told.Turns,
        };
        await SendAsync(stream, DisplayEvents.Update, picture, update, left).ConfigureAwait(false);
        return true;
    }

    /// <summary>By the domain's own options, as the store writes: the display reads it back to the same values.</summary>
    private static Task SendAsync<T>(EventStream stream, string name, long id, T value, CancellationToken left) =>
        stream.SendAsync(name, id, JsonSerializer.SerializeToUtf8Bytes(value, DomainJson.Options), left);
}
