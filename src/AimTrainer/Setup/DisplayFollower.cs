using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.ServerSentEvents;
using System.Text.Json;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>
/// Follows a station of a host elsewhere. It works every picture out from the session's own steps, so what is drawn here is what is
/// graded there. While the host is away the last picture stays, and says since when; when it is back only what is missing is asked for.
/// </summary>
/// <param name="host">The host.</param>
/// <param name="client">Asks it; its own time limit is off, because a stream has no end.</param>
/// <param name="clock">The time.</param>
/// <param name="slot">Where the pictures go.</param>
/// <param name="darkness">Where it goes that nothing may be shown.</param>
internal sealed class DisplayFollower(DisplayHost host, HttpClient client, TimeProvider clock, NewsSlot slot, Darkness darkness)
{
    /// <summary>A beat comes every 5 s; after this long without one the line counts as lost.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(12);

    // The first try after a loss comes at once: a host that was only started anew is back before anybody reads a notice.
    private static readonly double[] WaitSeconds = [0, 0.5, 1, 2, 3];
    private static readonly TimeSpan WaitWhenRefused = TimeSpan.FromSeconds(15);

    private SessionFollower? _follower;
    private string? _session;
    private string? _problem;
    private bool _stopped;
    private bool _hasPicture;
    private bool _heard;
    private DateTimeOffset _heardAt = clock.GetLocalNow();
    private string? _said;

    /// <summary>Told what a person should know, once for each thing.</summary>
    public Action<string> Say { get; init; } = _ => { };

    /// <summary>Follows until cancelled.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        if (darkness.Reason is null)
        {
            darkness.Set(host.Waiting);
        }

        var tries = 0;
        while (true)
        {
            _heard = false;
            var ended = await TryAsync(cancellationToken).ConfigureAwait(false);
            tries = _heard ? 0 : tries + 1;
            var wait = Take(ended, tries);
            await (DarkFor(ended) is { } reason ? WaitRefusedAsync(reason, wait, cancellationToken) : Task.Delay(wait, clock, cancellationToken)).ConfigureAwait(false);
        }
    }

    /// <summary>
    /// What a refused display says is light on a lane. So it goes on asking whether projection is stopped, which needs no token, and says
    /// nothing while it is.
    /// </summary>
    private async Task WaitRefusedAsync(DarkReason reason, TimeSpan wait, CancellationToken cancellationToken)
    {
        using var enough = new CancellationTokenSource(wait, clock);
        using var over = CancellationTokenSource.CreateLinkedTokenSource(enough.Token, cancellationToken);
        try
        {
            await StopStream.ReadAsync(client, host.Server, clock, stopped => darkness.Set(stopped ? new DarkReason.Stopped() : reason), over.Token).ConfigureAwait(false);
            if (darkness.Reason is DarkReason.Waiting)
            {
                darkness.Set(reason);
            }

            await Task.Delay(Timeout.InfiniteTimeSpan, clock, over.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            // It has waited long enough.
        }
    }

    private static DarkReason? DarkFor(DisplayHostTry ended) => ended switch
    {
        DisplayHostTry.NotAllowed => new DarkReason.NotAllowed(FirstLine(ended.Why)),
        DisplayHostTry.Differs => new DarkReason.Differs(FirstLine(ended.Why)),
        _ => null,
    };

    /// <summary>Follows until the host ends it, or is lost.</summary>
    public async Task<DisplayHostTry> TryAsync(CancellationToken cancellationToken)
    {
        using var patience = new CancellationTokenSource(Patience, clock);
        using var over = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, cancellationToken);
        try
        {
            using var request = Request();
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, over.Token).ConfigureAwait(false);
            if (!answer.IsSuccessStatusCode || answer.Content.Headers.ContentType?.MediaType != "text/event-stream")
            {
                return await RefusedAsync(answer, over.Token).ConfigureAwait(false);
            }

            var stream = await answer.Content.ReadAsStreamAsync(over.Token).ConfigureAwait(false);
            await using (stream.ConfigureAwait(false))
            {
                await foreach (var item in SseParser.Create(stream, (_, data) => data.ToArray()).EnumerateAsync(over.Token).ConfigureAwait(false))
                {
                    patience.CancelAfter(Patience);
                    _heardAt = clock.GetLocalNow();
                    _heard = true;
                    if (Take(item.EventType, item.Data) is { } ended)
                    {
                        return ended;
                    }
                }
            }

            return new DisplayHostTry.Lost("it ended the connection");
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            return new DisplayHostTry.Lost("nothing was heard of it for too long");
        }
        catch (Exception exception) when (exception is HttpRequestException or IOException)
        {
            return new DisplayHostTry.Lost((exception.InnerException ?? exception).Message.TrimEnd('.'));
        }
        catch (Exception exception) when (exception is JsonException or FormatException or ArgumentException)
        {
            return new DisplayHostTry.Differs("what the host sends is not what this version reads; use the same version of aimtrainer for both");
        }
    }

    /// <summary>Shows how a try ended.</summary>
    /// <param name="ended">How.</param>
    /// <param name="tries">How many tries in a row nothing was heard in; 0 when something was.</param>
    /// <returns>How long to wait before the next.</returns>
    internal TimeSpan Take(DisplayHostTry ended, int tries)
    {
        switch (ended)
        {
            case DisplayHostTry.NotAllowed or DisplayHostTry.Differs:
                SayOnce($"{host}: {ended.Why}");

                // What the host goes on with is not known here: an old target must not stay on a lane. While projection is stopped, or it is
                // not known whether it is, not even a word is light there.
                if (darkness.Reason is not (DarkReason.Stopped or DarkReason.Waiting))
                {
                    darkness.Set(DarkFor(ended));
                }

                return WaitWhenRefused;
            default:
                // One try in between is made before anything is said of it.
                if (tries > 0)
                {
                    SayOnce($"{host}: {ended.Why}; trying again, the last picture stays");
                    Show(slot.Newest.Snapshot, ended.Why, _heardAt);
                }

                return TimeSpan.FromSeconds(WaitSeconds[Math.Min(tries, WaitSeconds.Length - 1)]);
        }
    }

    private static string FirstLine(string text) => text.Split('\n')[0];

    /// <returns>Null to go on.</returns>
    private DisplayHostTry? Take(string name, byte[] data)
    {
        switch (name)
        {
            case DisplayEvents.Hello:
                var hello = Read<DisplayHello>(data);

                // What was shown before may be of another session by now: only an update makes a dark display light again.
                _hasPicture = false;
                return hello.Protocol == DisplayHello.Spoken ? null
                    : new DisplayHostTry.Differs($"the host ({hello.Version}) is {(hello.Protocol > DisplayHello.Spoken ? "newer" : "older")} than this display; use the same version of aimtrainer for both");
            case DisplayEvents.Projection:
                _stopped = Read<ProjectionState>(data).Stopped;
                if (_stopped)
                {
                    darkness.Set(new DarkReason.Stopped());
                }
                else if (_hasPicture)
                {
                    darkness.Set(null);
                }

                return null;
            case DisplayEvents.Update:
                Take(Read<DisplayUpdate>(data));
                return null;
            case DisplayEvents.End:
                return new DisplayHostTry.NotAllowed(Read<DisplayEnd>(data).Why);
            default:
                return null;
        }
    }

    private void Take(DisplayUpdate update)
    {
        if (update.SessionId is null)
        {
            (_follower, _session, _problem) = (null, null, null);
        }
        else if (update.Setup is { } setup)
        {
            _session = update.SessionId;
            (_follower, _problem) = SessionFollower.Open(new StoredSession(setup, update.DrillJson ?? "", Ended: false));
        }

        foreach (var step in update.Steps)
        {
            _problem ??= _follower?.Take(step);
        }

        // A picture that could not be worked out is not shown as if it could: the last good one stays, with a notice.
        var snapshot = _problem is not null ? slot.Newest.Snapshot
            : _follower is { } follower ? follower.Snapshot with { NameOnScreen = update.NameOnScreen, Turns = update.Turns } : SessionSnapshot.Idle(host.Station);
        var notice = _problem is null ? null : $"session {update.SessionId} cannot be shown: {_problem}; use the same version of aimtrainer for the display as for the host";
        SayOnce(notice ?? $"{host}: shown");
        Show(snapshot, notice, null);
        _hasPicture = true;
        if (!_stopped)
        {
            darkness.Set(null);
        }
    }

    private static T Read<T>(byte[] data) => JsonSerializer.Deserialize<T>(data, DomainJson.Options) ?? throw new JsonException("found null");

    private HttpRequestMessage Request()
    {
        var known = _follower is { } follower && _problem is null ? string.Create(CultureInfo.InvariantCulture, $"&session={Uri.EscapeDataString(_session!)}&after={follower.Sequence}") : "";
        var kind = host.Kind == ScreenKind.Overhead ? "overhead" : "projector";
        var address = string.Create(CultureInfo.InvariantCulture, $"api/stations/{host.Station}/displays/{kind}?protocol={DisplayHello.Spoken}{known}");
        var request = new HttpRequestMessage(HttpMethod.Get, new Uri(host.Server, address));
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("text/event-stream"));
        request.Headers.Authorization = host.Token is null ? null : new AuthenticationHeaderValue("Bearer", host.Token);
        return request;
    }

    private static async Task<DisplayHostTry> RefusedAsync(HttpResponseMessage answer, CancellationToken cancellationToken)
    {
        var detail = "";
        if (answer.Content.Headers.ContentType?.MediaType == "application/problem+json")
        {
            using var said = JsonDocument.Parse(await answer.Content.ReadAsByteArrayAsync(cancellationToken).ConfigureAwait(false));
            detail = said.RootElement.TryGetProperty("detail", out var text) ? text.GetString() ?? "" : "";
        }

        var status = (int)answer.StatusCode;
        return answer.StatusCode switch
        {
            HttpStatusCode.Unauthorized => new DisplayHostTry.NotAllowed(detail.StartsWith("token:", StringComparison.Ordinal)
                ? "The host does not know this display's token, or it was revoked." : "The host wants a token of this display."),
            HttpStatusCode.Forbidden => new DisplayHostTry.NotAllowed($"The token is for another station or another kind of display ({detail})."),
            HttpStatusCode.NotFound => new DisplayHostTry.Differs(
                detail.StartsWith("station:", StringComparison.Ordinal) ? detail : "it is no host of aimtrainer, or one too old for displays elsewhere: see that the address is right, and use the same version of aimtrainer for both"),
            HttpStatusCode.Conflict or HttpStatusCode.BadRequest => new DisplayHostTry.Differs(detail),
            _ when status < 400 => new DisplayHostTry.Differs("it is no host of aimtrainer: see that the address is right"),
            _ => new DisplayHostTry.Lost(string.Create(CultureInfo.InvariantCulture, $"it answered {status} {detail}").TrimEnd()),
        };
    }

    private void Show(SessionSnapshot snapshot, string? notice, DateTimeOffset? awaySince)
    {
        var now = slot.Newest;
        if (notice != now.Notice || awaySince != now.AwaySince || !DisplayNews.IsSame(snapshot, now.Snapshot))
        {
            slot.Put(new DisplayNews(snapshot, notice) { AwaySince = awaySince });
        }
    }

    private void SayOnce(string text)
    {
        if (text != _said)
        {
            _said = text;
            Say(text);
        }
    }
}
