using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using AimTrainer.Store.Sqlite;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>
/// A center made of the real program: <c>serve --chain</c> holds the record and sends while shots come over HTTP, as from sensors. A shot
/// without an answer is sent again with its id after the next start, while its session is under way.
/// </summary>
internal sealed class ProcessCenter : IDisposable
{
    private const int Lanes = 2;

    /// <summary>Above what anything takes: a host that neither answers nor sends must not hold up everything.</summary>
    private static readonly TimeSpan _longestLife = TimeSpan.FromMinutes(5);

    private static readonly TimeSpan _look = TimeSpan.FromMilliseconds(3);

    private readonly TemporaryFolder _folder = new();
    private readonly Chance _chance;
    private readonly ChaosProxy _proxy;
    private readonly List<string> _acknowledged = [];
    private readonly string?[] _sessions = new string?[Lanes];
    private readonly string?[] _unanswered = new string?[Lanes];
    private int _made;

    public ProcessCenter(string name, string token, ChaosProxy proxy, Chance chance)
    {
        (Name, _proxy, _chance) = (name, proxy, chance);
        File.WriteAllText(TokenFile, token);
    }

    public string Name { get; }

    /// <summary>How often a process of it was killed.</summary>
    public int Kills { get; private set; }

    /// <summary>Ids of the shots that the host said it has kept.</summary>
    public IReadOnlyCollection<string> Acknowledged => _acknowledged;

    private string Data => _folder.File("data");

    private string TokenFile => _folder.File("token");

    private string ChainAddress => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{_proxy.Port}");

    /// <summary>One life of the host: shots are thrown on all lanes at once until a chance moment of its sending, and there it is killed.</summary>
    /// <param name="fewest">So many shots are acknowledged before it may be killed.</param>
    public async Task LiveAsync(int fewest)
    {
        using var host = ProgramProcess.Start(
            null, "serve", "--data", Data, "--urls", "http://127.0.0.1:0", "--stations", $"{Lanes}", "--chain", ChainAddress, "--token-file", TokenFile);
        using var client = new HttpClient { BaseAddress = await host.AddressAsync(Cancel) };
        using var end = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var throwing = Enumerable.Range(0, Lanes).Select(lane => ThrowAsync(client, lane, end.Token)).ToList();
        var (until, kept) = (_proxy.Passed + 1 + _chance.Index(8), _acknowledged.Count + fewest);

        // A line that was cut at once keeps the host waiting for its next try: then it is killed in that wait.
        var most = kept + 20 + _chance.Index(60);
        using var life = new CancellationTokenSource(_longestLife);
        while (!life.IsCancellationRequested && Count() < most && (_proxy.Passed < until || Count() < kept))
        {
            await Task.Delay(_look, Cancel);
        }

        // Shots are on their way at this moment, and a delivery.
        await host.KillAsync();
        Kills++;
        Assert.True(Count() >= kept, $"{Name}: {Count()} shots were acknowledged, {kept} were waited for: {host.Said}");
        await end.CancelAsync();
        await Task.WhenAll(throwing);
    }

    /// <summary>Sends with a process of its own that is killed at a chance moment of it; whether it came so far is left to chance too.</summary>
    public async Task SendAndKillAsync()
    {
        using var sync = Sync();
        var until = _proxy.Passed + 1 + _chance.Index(3);
        var ended = sync.EndAsync();
        while (_proxy.Passed < until && !ended.IsCompleted)
        {
            await Task.Delay(_look, Cancel);
        }

        if (!ended.IsCompleted)
        {
            Kills++;
            await sync.KillAsync();
        }
    }

    /// <summary>Sends until nothing waits.</summary>
    public async Task SendAllAsync()
    {
        for (var again = 0; ; again++)
        {
            using var sync = Sync();
            if (await sync.EndAsync() == 0)
            {
                return;
            }

            Assert.True(again < 10, $"{Name}: {sync.Said}");
        }
    }

    /// <summary>What lies in its record, read when no process holds it any more: every step, and each session's shots and points.</summary>
    public async Task<(List<(string Session, long Sequence, string Input, string Events)> Steps, List<(string Id, int Shots, int Points)> Totals)> RecordAsync()
    {
        using var held = DataFolder.Open(Data);
        using var store = SqliteSessionStore.Open(held);
        var steps = await store.AskAsync(
            record => Task.FromResult((
                from step in record.LogSteps
                join session in record.Sessions on step.SessionKey equals session.Key
                select new { session.Id, step.Sequence, step.InputJson, step.EventsJson }).AsEnumerable()
                .Select(step => (step.Id, step.Sequence, step.InputJson, step.EventsJson)).Order().ToList()),
            Cancel);

        // A session that was set up and killed before its first step has nothing to send.
        var begun = steps.Select(step => step.Id).ToHashSet();
        var totals = (await store.ListAsync(new Sessions.SessionFilter { Limit = int.MaxValue }, Cancel)).Where(session => begun.Contains(session.SessionId)).Select(session => (session.SessionId, session.Shots, session.Points)).Order().ToList();
        return (steps, totals);
    }

    public void Dispose() => _folder.Dispose();

    private ProgramProcess Sync() => ProgramProcess.Start(null, "sync", "--data", Data, "--to", ChainAddress, "--token-file", TokenFile);

    private int Count()
    {
        lock (_acknowledged)
        {
            return _acknowledged.Count;
        }
    }

    /// <summary>Throws on one lane, a shot after the other and a session after the other, until the host is gone.</summary>
    private async Task ThrowAsync(HttpClient client, int lane, CancellationToken cancellationToken)
    {
        try
        {
            while (true)
            {
                if (_sessions[lane] is null)
                {
                    await BeginAsync(client, lane, cancellationToken);
                }

                var id = _unanswered[lane] ??= $"{Name}-{Interlocked.Increment(ref _made)}";
                var shot = string.Create(CultureInfo.InvariantCulture, $$"""{"id":"{{id}}","arrowsBoard":{{8 + (4 * _chance.Next()):0.00}}}""");
                using var answer = await PostAsync(client, $"api/stations/{lane + 1}/shots", shot, cancellationToken);
                if (answer.StatusCode == HttpStatusCode.Conflict)
                {
                    // The drill's ten shots are thrown. One that nobody answered may be the last of them: it belongs to that session, and is
                    // not sent to another (docs/feeds.md).
                    (_sessions[lane], _unanswered[lane]) = (null, null);
                    continue;
                }

                answer.EnsureSuccessStatusCode();
                lock (_acknowledged)
                {
                    _acknowledged.Add(id);
                }

                _unanswered[lane] = null;
                var what = _chance.Next();
                if (what < 0.2)
                {
                    var number = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(cancellationToken)).RootElement.GetProperty("number").GetInt32();
                    using var done = await PostAsync(
                        client, $"api/stations/{lane + 1}/actions",
                        what < 0.1 ? """{"kind":"note","text":"slow oil"}""" : string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"void","number":{{number}},"reason":"slipped"}"""),
                        cancellationToken);
                    done.EnsureSuccessStatusCode();
                }

                await Task.Delay(TimeSpan.FromMilliseconds(40 * _chance.Next()), cancellationToken);
            }
        }
        catch (Exception exception) when (exception is OperationCanceledException or HttpRequestException { StatusCode: null } or IOException)
        {
            // Killed. What had no answer is sent again.
        }
    }

    private async Task BeginAsync(HttpClient client, int lane, CancellationToken cancellationToken)
    {
        using var made = await PostAsync(
            client, $"api/stations/{lane + 1}/sessions",
            string.Create(CultureInfo.InvariantCulture, $$"""{"bowler":"bowler {{_chance.Index(4)}}","drill":"ten-shot-spread"}"""), cancellationToken);
        if (made.StatusCode != HttpStatusCode.Conflict)
        {
            // A conflict: it was made before the last kill, and nobody heard the answer.
            made.EnsureSuccessStatusCode();
        }

        using var begun = await PostAsync(client, $"api/stations/{lane + 1}/actions", """{"kind":"begin"}""", cancellationToken);
        _sessions[lane] = "under way";
    }

    private static Task<HttpResponseMessage> PostAsync(HttpClient client, string where, string json, CancellationToken cancellationToken) =>
        client.PostAsync(new Uri(where, UriKind.Relative), new StringContent(json, Encoding.UTF8, "application/json"), cancellationToken);
}
