using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using AimTrainer.Setup;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web.Tests;

/// <summary>The program's own host on a free port, with a data folder of its own.</summary>
internal sealed class TestHost : IAsyncDisposable
{
    private readonly Func<ConsoleOptions, ConsoleOptions> _options;
    private ConsoleHost _host;

    private TestHost(string folder, Func<ConsoleOptions, ConsoleOptions> options, ConsoleHost host) => (Folder, _options, _host) = (folder, options, host);

    public const string Words = "correct horse battery staple";

    public string Folder { get; }

    public HttpClient Client { get; private set; } = null!;

    public Uri Address => new(_host.Addresses.First());

    public IPEndPoint Lines => _host.LinesAddress!;

    public IServiceProvider Services => _host.Services;

    /// <summary>Everything that was logged, at every level.</summary>
    public LogLines Log { get; } = new();

    public static async Task<TestHost> StartAsync(int stations = 2, bool lines = false, bool passphrase = false, TimeProvider? clock = null, Func<ConsoleOptions, ConsoleOptions>? adjustOptions = null)
    {
        var folder = Directory.CreateTempSubdirectory("aimtrainer-web-").FullName;
        if (passphrase)
        {
            new Passphrase(folder).Set(Words);
        }

        TestHost? host = null;
        ConsoleOptions Options(ConsoleOptions options) => (adjustOptions ?? (same => same))(options with
        {
            DataFolder = folder,
            Stations = stations,
            Urls = host is null ? "http://127.0.0.1:0" : options.Urls,
            Lines = lines ? new IPEndPoint(IPAddress.Loopback, 0) : null,
            Adjust = services =>
            {
                services.AddLogging(logging => logging.AddProvider(host!.Log).AddFilter<LogLines>(null, LogLevel.Trace));
                if (clock is not null)
                {
                    services.AddSingleton(clock);
                }
            },
        });
        var made = new TestHost(folder, Options, null!);
        host = made;
        await made.OpenAsync("http://127.0.0.1:0");
        return made;
    }

    /// <summary>Stops it and starts it again, at the same address.</summary>
    public async Task RestartAsync()
    {
        var address = Address.GetLeftPart(UriPartial.Authority);
        await _host.DisposeAsync();
        await OpenAsync(address);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _host.DisposeAsync();
        Log.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>A browser of its own: cookies, and the form token with whatever changes something.</summary>
    public Browser Browser() => new(Address);

    /// <summary>Starts a session of ten shots on a station and shows its first target.</summary>
    public async Task<string> StartSessionAsync(int station = 1, HttpClient? client = null)
    {
        var started = await (client ?? Client).PostAsync(
            $"/api/stations/{station}/sessions", Json("""{"bowler":"Ann","drill":"ten-shot-spread","hand":"right"}"""), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Created, started.StatusCode);
        var begun = await (client ?? Client).PostAsync($"/api/stations/{station}/actions", Json("""{"kind":"begin"}"""), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, begun.StatusCode);
        return (await BodyAsync(started)).GetProperty("sessionId").GetString()!;
    }

    public Task<HttpResponseMessage> ShotAsync(string id, double board = 10, int station = 1, string? token = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, $"/api/stations/{station}/shots")
        {
            Content = Json(FormattableString.Invariant($$"""{"id":"{{id}}","arrowsBoard":{{board}}}""")),
        };
        request.Headers.Authorization = token is null ? null : new AuthenticationHeaderValue("Bearer", token);
        return Client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public async Task<JsonElement> GetAsync(string path) => await Client.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken);

    public static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");

    public static async Task<JsonElement> BodyAsync(HttpResponseMessage answer) =>
        await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);

    /// <summary>A refusal of this status, in words that say what to do.</summary>
    public static async Task<string> RefusedAsync(HttpStatusCode status, HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(status == answer.StatusCode, $"{answer.RequestMessage?.Method} {answer.RequestMessage?.RequestUri}: {(int)answer.StatusCode} {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonDocument.Parse(text).RootElement;
        Assert.Equal((int)status, problem.GetProperty("status").GetInt32());
        Assert.NotEqual("", problem.GetProperty("title").GetString());
        return problem.GetProperty("detail").GetString()!;
    }

    private async Task OpenAsync(string urls)
    {
        _host = await ConsoleHost.OpenAsync(_options(new ConsoleOptions { Urls = urls }) with { Urls = urls }, TestContext.Current.CancellationToken);
        Client?.Dispose();
        Client = new HttpClient(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = Address };
    }
}
