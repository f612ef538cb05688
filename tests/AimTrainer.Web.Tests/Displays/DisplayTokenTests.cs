using System.Net;
using System.Net.Http.Headers;
using AimTrainer.Sessions;

namespace AimTrainer.Web.Tests;

public sealed class DisplayTokenTests : IAsyncLifetime
{
    private TestHost _host = null!;
    private Browser _coach = null!;
    private string _token = "";

    public async ValueTask InitializeAsync()
    {
        _host = await TestHost.StartAsync(8, passphrase: true);
        _coach = _host.Browser();
        await _coach.SignInAsync();
        var made = await TestHost.BodyAsync(await _coach.PostAsync("/api/access/displays", """{"name":"pair 7 and 8","station":7,"kind":"overhead"}"""));
        _token = made.GetProperty("token").GetString()!;
    }

    public async ValueTask DisposeAsync()
    {
        _coach.Dispose();
        await _host.DisposeAsync();
    }

    [Fact]
    public void Token_OnTheDisk_IsAHashOnly()
    {
        var kept = File.ReadAllText(Path.Combine(_host.Folder, "display-tokens.json"));

        Assert.DoesNotContain(_token, kept, StringComparison.Ordinal);
        Assert.Contains("\"hash\"", kept, StringComparison.Ordinal);
        Assert.DoesNotContain(_token, File.ReadAllText(Path.Combine(_host.Folder, "audit.jsonl")), StringComparison.Ordinal);
        Assert.DoesNotContain(_token, _host.Log.All, StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(_host.Folder, "display-tokens.json")));
        }
    }

    [Theory]
    [InlineData("GET", "/api/stations/7/displays/overhead", HttpStatusCode.OK)]
    [InlineData("GET", "/api/stations/7/displays/projector", HttpStatusCode.Forbidden)]
    [InlineData("GET", "/api/stations/8/displays/overhead", HttpStatusCode.Forbidden)]
    [InlineData("GET", "/api/stations/7", HttpStatusCode.Forbidden)]
    [InlineData("GET", "/api/stations/7/live", HttpStatusCode.Forbidden)]
    [InlineData("GET", "/api/stations", HttpStatusCode.Forbidden)]
    [InlineData("GET", "/api/sessions", HttpStatusCode.Forbidden)]
    [InlineData("GET", "/api/bowlers", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/stations/7/shots", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/stations/8/shots", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/stations/7/actions", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/projection/stop", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/projection/release", HttpStatusCode.Forbidden)]
    [InlineData("POST", "/api/access/displays", HttpStatusCode.Forbidden)]
    public async Task Token_OfOneDisplay_OpensItsOwnStreamAndNothingElse(string method, string path, HttpStatusCode wanted)
    {
        using var answer = await AskAsync(new HttpMethod(method), path, _token);

        Assert.Equal(wanted, answer.StatusCode);
    }

    [Fact]
    public async Task Token_NoneOrAWrongOne_GetsNothing()
    {
        using var none = await AskAsync(HttpMethod.Get, "/api/stations/7/displays/overhead", null);
        using var wrong = await AskAsync(HttpMethod.Get, "/api/stations/7/displays/overhead", _token + "x");

        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized), (none.StatusCode, wrong.StatusCode));
    }

    [Fact]
    public async Task List_WhileADisplayLooks_CountsIt()
    {
        await using var display = new LookingDisplay(_host.Address, 7, ScreenKind.Overhead, _token);
        await display.UntilAsync(one => one.Dark.Reason is null);

        var listed = await TestHost.BodyAsync(await _coach.SendAsync(HttpMethod.Get, "/api/access/displays"));

        Assert.Equal(("pair 7 and 8", 7, "overhead", 1), (
            listed[0].GetProperty("name").GetString(), listed[0].GetProperty("station").GetInt32(), listed[0].GetProperty("kind").GetString(), listed[0].GetProperty("looking").GetInt32()));
    }

    [Theory]
    [InlineData("""{"name":"x","station":7,"kind":"lamp"}""", "$.kind: found \"lamp\"")]
    [InlineData("""{"name":"x","station":65,"kind":"overhead"}""", "$.station: found 65")]
    [InlineData("""{"station":1,"kind":"overhead"}""", "name")]
    public async Task Make_WrongWish_SaysWhatIsAllowed(string body, string said)
    {
        Assert.Contains(said, await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await _coach.PostAsync("/api/access/displays", body)), StringComparison.Ordinal);
    }

    [Fact]
    public void Held_OnTheDisplaysMachine_IsFoundAgainForThatDisplayAlone()
    {
        var folder = Path.Combine(_host.Folder, "display");
        var held = new HeldTokens(folder);
        var server = new Uri("http://10.0.0.5:5271");
        held.Keep(server, 7, ScreenKind.Overhead, "display-a");
        held.Keep(server, 7, ScreenKind.Projector, "display-b");
        held.Keep(server, 7, ScreenKind.Overhead, "display-c");

        var again = new HeldTokens(folder);
        Assert.Equal(
            ("display-c", "display-b", null, null),
            (again.Find(server, 7, ScreenKind.Overhead), again.Find(server, 7, ScreenKind.Projector), again.Find(server, 8, ScreenKind.Overhead), again.Find(new Uri("http://10.0.0.6:5271"), 7, ScreenKind.Overhead)));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(held.Name));
        }
    }

    private async Task<HttpResponseMessage> AskAsync(HttpMethod method, string path, string? token)
    {
        var request = new HttpRequestMessage(method, path) { Content = method == HttpMethod.Post ? TestHost.Json("{}") : null };
        request.Headers.Authorization = token is null ? null : new AuthenticationHeaderValue("Bearer", token);
        return await _host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
    }
}
