using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Net.ServerSentEvents;
using System.Text;
using System.Text.Json;
using System.Threading.Channels;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Web;

namespace AimTrainer.Setup;

/// <summary>
/// Opens a calibration of this process to the pages of a host. The line goes outward from here, so that nothing listens beside the
/// projector: what is to be done comes as server-sent events, what came of it is reported back. Without the host the keys still work.
/// </summary>
internal sealed class ProjectorLink : IDisposable
{
    /// <summary>A beat comes every 5 s; after this long without one the line counts as lost.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(12);

    private static readonly TimeSpan FirstWait = TimeSpan.FromMilliseconds(250), LongestWait = TimeSpan.FromSeconds(3), CloseWithin = TimeSpan.FromSeconds(2);

    private readonly HttpClient _http;
    private readonly Uri _host;
    private readonly Action<string> _say;
    private readonly TimeProvider _clock;
    private readonly CancellationTokenSource _stop = new();
    private readonly Channel<bool> _dirty = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private Task _running = Task.CompletedTask;

    private ProjectorLink(HttpClient http, Uri host, Action<string> say, TimeProvider clock) => (_http, _host, _say, _clock) = (http, host, say, clock);

    /// <summary>Asks a host to be let in.</summary>
    /// <param name="host">The address of its console.</param>
    /// <param name="askCode">Asks for the coach's code, where the host wants one; null when there is none.</param>
    /// <param name="say">Told in words how the line stands.</param>
    /// <param name="clock">The time.</param>
    /// <param name="cancellationToken">Ends the asking.</param>
    /// <exception cref="UserException">The host does not answer, or does not let this in.</exception>
    public static async Task<ProjectorLink> OpenAsync(Uri host, Func<string?> askCode, Action<string> say, TimeProvider clock, CancellationToken cancellationToken)
    {
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false, UseProxy = false };
        var http = new HttpClient(handler) { BaseAddress = host, Timeout = Timeout.InfiniteTimeSpan };
        using var patience = new CancellationTokenSource(Patience, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, patience.Token);
        try
        {
            var access = await http.GetFromJsonAsync<AccessAnswer>("/api/access", WebJson.Options, either.Token).ConfigureAwait(false);
            if (access?.Role != Role.Coach)
            {
                var code = askCode() ?? throw new UserException($"--host {host}: wants a code; the coach makes one on the console's Projector page");
                await LetInAsync(http, host, code, cancellationToken).ConfigureAwait(false);
            }

            return new ProjectorLink(http, host, say, clock);
        }
        catch (Exception exception)
        {
            http.Dispose();
            throw exception switch
            {
                HttpRequestException or IOException => NoHost(host, exception.Message),
                OperationCanceledException when patience.IsCancellationRequested => NoHost(host, "it does not answer"),
                JsonException or NotSupportedException => NoHost(host, "what answers there is no console of this program"),
                _ => exception,
            };
        }
    }

    /// <summary>Opens a calibration to the host's pages, until <see cref="CloseAsync"/>.</summary>
    public void Begin(ICalibrationDoor door) => _running = Task.Run(() => RunAsync(door));

    /// <summary>The calibration has changed: it is reported.</summary>
    public void Changed() => _dirty.Writer.TryWrite(true);

    /// <summary>Reports what there is to report, and closes the line.</summary>
    public async Task CloseAsync()
    {
        Changed();
        _dirty.Writer.TryComplete();
        _stop.CancelAfter(CloseWithin);
        await _running.ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _stop.Dispose();
        _http.Dispose();
    }

    private static UserException NoHost(Uri host, string why) =>
        new($"--host {host}: {why.TrimEnd('.')}; allowed: the address of a console that runs, as aimtrainer serve prints it; without --host the keys work", ExitCodes.Failed);

    private static async Task LetInAsync(HttpClient http, Uri host, string code, CancellationToken cancellationToken)
    {
        using var answer = await http.PostAsJsonAsync("/api/access/projectors", new { code }, cancellationToken).ConfigureAwait(false);
        if (!answer.IsSuccessStatusCode)
        {
            throw new UserException($"--host {host}: {await WhyAsync(answer, cancellationToken).ConfigureAwait(false)}");
        }

        var letIn = await answer.Content.ReadFromJsonAsync<ProjectorLetIn>(WebJson.Options, cancellationToken).ConfigureAwait(false);
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", letIn!.Token);
    }

    private static async Task<string> WhyAsync(HttpResponseMessage answer, CancellationToken cancellationToken)
    {
        try
        {
            var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(cancellationToken).ConfigureAwait(false);
            return problem.GetProperty("detail").GetString() ?? $"it answered {(int)answer.StatusCode}";
        }
        catch (Exception exception) when (exception is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return $"it answered {(int)answer.StatusCode}";
        }
    }

    private async Task RunAsync(ICalibrationDoor door)
    {
        var (wait, told) = (FirstWait, false);
        while (!_stop.IsCancellationRequested && !_dirty.Reader.Completion.IsCompleted)
        {
            try
            {
                if (await AttachAsync(door, () => (wait, told) = (FirstWait, false)).ConfigureAwait(false) is { } over)
                {
                    _say($"{_host}: {over}; the keys still work");
                    return;
                }
            }
            catch (Exception exception) when (exception is HttpRequestException or IOException or JsonException or OperationCanceledException)
            {
                // The line broke, or is being closed.
            }

            if (_dirty.Reader.Completion.IsCompleted)
            {
                return;
            }

            if (!told)
            {
                told = true;
                _say($"{_host}: does not answer; tried again until it does, and the keys still work");
            }

            try
            {
                await Task.Delay(wait, _clock, _stop.Token).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                return;
            }

            wait = wait + wait < LongestWait ? wait + wait : LongestWait;
        }
    }

    /// <summary>One line, until it ends.</summary>
    /// <returns>Why there is to be no other; null when the line broke.</returns>
    private async Task<string?> AttachAsync(ICalibrationDoor door, Action attached)
    {
        var place = $"/api/projectors/{door.Station.ToString(CultureInfo.InvariantCulture)}/{Uri.EscapeDataString(door.Projector)}";
        using var patience = new CancellationTokenSource(Patience, _clock);
        using var over = CancellationTokenSource.CreateLinkedTokenSource(_stop.Token, patience.Token);
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{place}/attachment") { Content = Json($"{{\"state\":{door.StateJson}}}") };
        using var answer = await _http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, over.Token).ConfigureAwait(false);
        if (!answer.IsSuccessStatusCode)
        {
            var why = await WhyAsync(answer, over.Token).ConfigureAwait(false);
            return answer.StatusCode is HttpStatusCode.TooManyRequests or HttpStatusCode.ServiceUnavailable ? null : why;
        }

        var answers = new ConcurrentQueue<object>();
        var reporting = Task.CompletedTask;
        var stream = await answer.Content.ReadAsStreamAsync(over.Token).ConfigureAwait(false);
        await using (stream.ConfigureAwait(false))
        {
            try
            {
                await foreach (var item in SseParser.Create(stream).EnumerateAsync(over.Token).ConfigureAwait(false))
                {
                    patience.CancelAfter(Patience);
                    switch (item.EventType)
                    {
                        case "attached":
                            attached();
                            _say($"{_host}: this projector can be set up from the console's Projector page");
                            using (var first = JsonDocument.Parse(item.Data))
                            {
                                reporting = ReportAsync(door, place, first.RootElement.GetProperty("attachment").GetString()!, answers, over);
                            }

                            break;
                        case "action":
                            var done = door.Do(item.Data);
                            answers.Enqueue(new
                            {
                                number = long.Parse(item.EventId ?? "0", CultureInfo.InvariantCulture),
                                understood = done.Understood,
                                problem = done.Problem.Length > 0 ? done.Problem : null,
                            });
                            Changed();
                            break;
                        case "replaced":
                            return "another calibration of this projector took its place";
                        default:
                            break;
                    }
                }
            }
            finally
            {
                await over.CancelAsync().ConfigureAwait(false);
                await reporting.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }

        return null;
    }

    /// <summary>Reports whatever is new; at the end of all changes, or when the host takes no more, the line is over.</summary>
    private async Task ReportAsync(ICalibrationDoor door, string place, string attachment, ConcurrentQueue<object> answers, CancellationTokenSource over)
    {
        try
        {
            while (await _dirty.Reader.WaitToReadAsync(over.Token).ConfigureAwait(false))
            {
                _dirty.Reader.TryRead(out _);
                var some = new List<object>();
                while (answers.TryDequeue(out var next))
                {
                    some.Add(next);
                }

                var text = $"{{\"attachment\":\"{attachment}\",\"answers\":{JsonSerializer.Serialize(some, WithoutNulls)},\"state\":{door.StateJson}}}";
                using var request = new HttpRequestMessage(HttpMethod.Put, $"{place}/state") { Content = Json(text) };
                using var answer = await _http.SendAsync(request, over.Token).ConfigureAwait(false);
                if (!answer.IsSuccessStatusCode)
                {
                    return;
                }
            }
        }
        catch (Exception exception) when (exception is HttpRequestException or OperationCanceledException)
        {
            // Whoever reads the line sees its end.
        }
        finally
        {
            await over.CancelAsync().ConfigureAwait(false);
        }
    }

    private static JsonSerializerOptions WithoutNulls { get; } = new() { DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull };

    private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");
}
