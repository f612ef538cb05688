using System.Net.Http.Json;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Faults.Tests;

/// <summary>
/// Displays in processes of their own follow the data folder of a host process on which two bowlers share a lane: the turn, and the
/// emergency stop. Every frame that a window would have shown is looked at. Names are invented.
/// </summary>
public sealed class SharedDisplayTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Displays_OfTheFolder_FollowTheTurnAndTheStop()
    {
        var data = _folder.File("data");
        using var host = TheProgram.Start([], "serve", "--stations", "2", "--urls", "http://127.0.0.1:0", "--data", data);
        var line = await host.LineAsync(text => text.Contains("http://", StringComparison.Ordinal), Stop);
        using var coach = new HttpClient { BaseAddress = new Uri(line.Split(' ').First(word => word.StartsWith("http://", StringComparison.Ordinal)).TrimEnd('/')) };
        await PostAsync(coach, "/api/people/agreed", """{"bowler":"Ann Aspen","shown":"givenName"}""");
        await BeginAsync(coach, "sessions", "Ann Aspen");
        await BeginAsync(coach, "bowlers", "Ben Birch");
        using var overhead = new RemoteDisplay("overhead", _folder.File("overhead"), data);
        using var projector = new RemoteDisplay("projector", _folder.File("projector"), data);
        var lit = await Task.WhenAll(((RemoteDisplay[])[overhead, projector]).Select(one => one.NextAsync(frame => !RemoteDisplay.IsBlack(frame), Stop)));

        // Ann throws, and it is Ben's turn: the same target, another name.
        await PostAsync(coach, "/api/stations/1/shots", """{"id":"a","arrowsBoard":10.4}""");
        var ben = await overhead.NextAsync(frame => !frame.AsSpan().SequenceEqual(lit[0].Frame), Stop);

        // The turn is moved by hand: no step came to any session, and the frame is another all the same.
        await PostAsync(coach, "/api/stations/1/turns", """{"kind":"skip"}""");
        await overhead.NextAsync(frame => !frame.AsSpan().SequenceEqual(ben.Frame), Stop);

        await PostAsync(coach, "/api/projection/stop", "{}");
        await projector.NextAsync(RemoteDisplay.IsBlack, Stop);
        await overhead.NextAsync(_ => true, Stop);
        await PostAsync(coach, "/api/projection/release", "{}");
        await projector.NextAsync(frame => !RemoteDisplay.IsBlack(frame), Stop);
        RemoteDisplay.Keep(overhead, projector);
    }

    private static async Task BeginAsync(HttpClient coach, string how, string bowler)
    {
        var session = (await PostAsync(coach, $"/api/stations/1/{how}", $$"""{"bowler":"{{bowler}}","drill":"three-rings","hand":"right"}""")).GetProperty("sessionId").GetString();
        await PostAsync(coach, $"/api/stations/1/actions?session={session}", """{"kind":"begin"}""");
    }

    private static async Task<JsonElement> PostAsync(HttpClient coach, string path, string json)
    {
        using var answer = await coach.PostAsync(path, new StringContent(json, Encoding.UTF8, "application/json"), Stop);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(Stop)}");
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
