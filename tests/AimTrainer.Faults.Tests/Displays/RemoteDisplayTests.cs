using System.Net.Http.Json;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Faults.Tests;

/// <summary>
/// Two display processes against one host process: it is killed and started again, projection is stopped and released, a token is
/// revoked. Every frame that a window would have shown is looked at.
/// </summary>
public sealed class RemoteDisplayTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Displays_HostKilledStartedAgainStoppedAndOneRevoked_EachFrameIsRight()
    {
        var host = TheProgram.Start([], "serve", "--stations", "8", "--urls", "http://127.0.0.1:0", "--data", _folder.File("data"));
        var server = Address(await host.LineAsync(line => line.Contains("http://", StringComparison.Ordinal), Stop));
        using var coach = new HttpClient { BaseAddress = new Uri(server) };
        await PostAsync(coach, "/api/stations/7/sessions", """{"bowler":"Invented","drill":"three-rings","hand":"right"}""");
        await PostAsync(coach, "/api/stations/7/actions", """{"kind":"begin"}""");
        var (overheadId, overheadToken) = await TokenAsync(coach, "overhead");
        var (_, projectorToken) = await TokenAsync(coach, "projector");
        using var overhead = new RemoteDisplay("overhead", server, overheadToken, _folder.File("overhead"), _folder.File("display"));
        using var projector = new RemoteDisplay("projector", server, projectorToken, _folder.File("projector"), _folder.File("display"));
        RemoteDisplay[] both = [overhead, projector];

        // The first frame waits for the host, dark; then the session.
        Assert.All(await Task.WhenAll(both.Select(one => one.NextAsync(Stop))), file => Assert.True(File.Exists(file)));
        var target = await Task.WhenAll(both.Select(one => one.NextAsync(frame => !RemoteDisplay.IsBlack(frame), Stop)));
        Assert.All(target, one => Assert.Empty(one.Between));

        host.Kill();
        host.Dispose();
        var away = await Task.WhenAll(both.Select(one => one.NextAsync(_ => true, Stop)));
        Assert.All(both.Index(), one => Assert.NotEqual(target[one.Index].Frame, away[one.Index].Frame));

        // The last picture stays: above its notice a screen is the same to the last pixel.
        var upper = 640 * 4 * 360 * 78 / 100;
        Assert.Equal(target[0].Frame[..upper], away[0].Frame[..upper]);
        using var again = TheProgram.Start([], "serve", "--stations", "8", "--urls", server, "--data", _folder.File("data"));
        await again.LineAsync(line => line.Contains("http://", StringComparison.Ordinal), Stop);
        var back = await Task.WhenAll(both.Select((one, i) => one.NextAsync(frame => frame.AsSpan().SequenceEqual(target[i].Frame), Stop)));
        Assert.All(back.SelectMany(one => one.Between), frame => Assert.False(RemoteDisplay.IsBlack(frame)));

        await PostAsync(coach, "/api/stations/7/shots", """{"id":"a","arrowsBoard":10.4}""");
        var shot = await Task.WhenAll(both.Select(one => one.NextAsync(_ => true, Stop)));
        Assert.All(both.Index(), one => Assert.False(shot[one.Index].Frame.AsSpan().SequenceEqual(target[one.Index].Frame)));

        await PostAsync(coach, "/api/projection/stop", "{}");
        var stopped = await overhead.NextAsync(_ => true, Stop);

        // A result leaves the lane after 12 s: on a slow machine that is a frame of its own before the dark one.
        await projector.NextAsync(RemoteDisplay.IsBlack, Stop);
        Assert.False(stopped.Frame.AsSpan().SequenceEqual(shot[0].Frame));
        await PostAsync(coach, "/api/projection/release", "{}");
        var released = await Task.WhenAll(both.Select(one => one.NextAsync(_ => true, Stop)));
        Assert.Equal(shot[0].Frame, released[0].Frame);
        Assert.False(RemoteDisplay.IsBlack(released[1].Frame));

        (await coach.DeleteAsync($"/api/access/displays/{overheadId}", Stop)).EnsureSuccessStatusCode();
        var revoked = await overhead.NextAsync(_ => true, Stop);
        Assert.False(revoked.Frame.AsSpan().SequenceEqual(released[0].Frame));
        RemoteDisplay.Keep(overhead, projector);
    }

    private static string Address(string line) => line.Split(' ').First(word => word.StartsWith("http://", StringComparison.Ordinal)).TrimEnd('/');

    private static async Task PostAsync(HttpClient coach, string path, string json)
    {
        using var answer = await coach.PostAsync(path, new StringContent(json, Encoding.UTF8, "application/json"), Stop);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(Stop)}");
    }

    private async Task<(string Id, string File)> TokenAsync(HttpClient coach, string kind)
    {
        using var answer = await coach.PostAsync(
            "/api/access/displays", new StringContent($$"""{"name":"invented","station":7,"kind":"{{kind}}"}""", Encoding.UTF8, "application/json"), Stop);
        var made = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var file = _folder.File($"{kind}.token");
        await File.WriteAllTextAsync(file, made.GetProperty("token").GetString(), Stop);
        return (made.GetProperty("display").GetProperty("id").GetString()!, file);
    }
}
