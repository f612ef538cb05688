using System.Net;
using System.Text.Json;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Web.Tests;

public sealed class AccessTests
{
    [Fact]
    public async Task NoPassphrase_ThisMachine_IsTheCoach()
    {
        await using var host = await TestHost.StartAsync();

        var me = await host.GetAsync("/api/access");

        Assert.Equal("coach", me.GetProperty("role").GetString());
        Assert.False(me.GetProperty("passphraseSet").GetBoolean());
        Assert.Equal(JsonValueKind.Null, me.GetProperty("formToken").ValueKind);
    }

    [Fact]
    public async Task NoPassphrase_PassedOnByAnotherProgram_IsNobody()
    {
        await using var host = await TestHost.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/stations");
        request.Headers.Add("X-Forwarded-For", "203.0.113.9");

        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.Client.SendAsync(request, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Passphrase_Set_NobodyIsTheCoachWithoutIt()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);

        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.Client.GetAsync("/api/stations", TestContext.Current.CancellationToken));
        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.ShotAsync("a"));
        using var page = new HttpRequestMessage(HttpMethod.Get, "/lane/1");
        page.Headers.Add("Accept", "text/html");
        var shown = await host.Client.SendAsync(page, TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in?next=%2Flane%2F1"), (shown.StatusCode, shown.Headers.Location?.ToString()));
        Assert.Equal(HttpStatusCode.OK, (await host.Client.GetAsync("/sign-in", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task SignIn_Coach_MayDoEverythingAndTheCookiesAreStrict()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        var answer = await coach.PostAsync("/api/access/sign-in", JsonSerializer.Serialize(new { passphrase = TestHost.Words }));

        var cookies = answer.Headers.GetValues("Set-Cookie").ToList();
        Assert.Equal(["aimtrainer.pass", "aimtrainer.form"], cookies.Select(cookie => cookie[..cookie.IndexOf('=', StringComparison.Ordinal)]));
        Assert.All(cookies, cookie =>
        {
            Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        });
        Assert.Equal(HttpStatusCode.OK, (await coach.Client.GetAsync("/api/stations", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await coach.PostAsync("/api/stations/1/sessions", """{"bowler":"Ann","drill":"ten-shot-spread"}""")).StatusCode);
    }

    [Fact]
    public async Task SignIn_ThenTheHostRestarts_PassAndFormTokenStillHold()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        var token = await coach.FormTokenAsync();

        await host.RestartAsync();

        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/access/codes") { Content = TestHost.Json("""{"station":1}""") };
        request.Headers.Add("x-aimtrainer-form", token);
        Assert.Equal(HttpStatusCode.OK, (await coach.Client.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task SignIn_PassphraseIsChanged_EarlierPassesEnd()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();

        // As the command does it, in another process.
        new Passphrase(host.Folder).Set("another few words here");

        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await coach.Client.GetAsync("/api/stations", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task SignOut_ThePassItself_IsWorthNothingAnyMore()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        var stolen = coach.Cookies["aimtrainer.pass"]!.Value;

        Assert.Equal(HttpStatusCode.OK, (await coach.PostAsync("/api/access/sign-out")).StatusCode);

        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/stations");
        request.Headers.Add("Cookie", $"aimtrainer.pass={stolen}");
        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.Client.SendAsync(request, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task SignIn_WrongPassphrases_AreSlowedDown()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        using var guesser = host.Browser();
        for (var i = 0; i < 5; i++)
        {
            await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await guesser.PostAsync("/api/access/sign-in", """{"passphrase":"not this one"}"""));
        }

        var right = JsonSerializer.Serialize(new { passphrase = TestHost.Words });
        var sixth = await guesser.PostAsync("/api/access/sign-in", right);
        await TestHost.RefusedAsync(HttpStatusCode.TooManyRequests, sixth);
        Assert.Equal(60, sixth.Headers.RetryAfter?.Delta?.TotalSeconds);
        clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(HttpStatusCode.OK, (await guesser.PostAsync("/api/access/sign-in", right)).StatusCode);
    }

    [Fact]
    public async Task Bowler_PairedPhone_SeesTheBowlersViewOfItsStationAndDoesNothing()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        using var phone = host.Browser();
        await coach.SignInAsync();
        await coach.PostAsync("/api/stations/1/sessions", """{"bowler":"Ann","drill":"ten-shot-spread"}""");
        await coach.PostAsync("/api/stations/1/actions", """{"kind":"begin"}""");
        await coach.PostAsync("/api/stations/1/shots", """{"id":"a","arrowsBoard":10}""");
        await phone.PairAsync(coach, 1);

        // The drill tells after ten shots: until then the phone knows nothing of the first.
        var seen = JsonDocument.Parse(await phone.Client.GetStringAsync("/api/stations/1", TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal((0, JsonValueKind.Null), (seen.GetProperty("lastShots").GetArrayLength(), seen.GetProperty("summary").ValueKind));
        using (var stream = await EventReader.OpenAsync(phone.Client, "/api/stations/1/live"))
        {
            Assert.Equal(0, (await stream.NextAsync())!.Value.Data.GetProperty("lastShots").GetArrayLength());
        }

        string[] closed =
        [
            "/api/stations/1/live?view=coach", "/api/stations/2", "/api/stations/2/live?view=bowler", "/api/stations", "/api/stations/all/live", "/api/sessions", "/api/bowlers",
            "/api/drills", "/api/access/feeds", "/api/access/pairings", "/", "/lane/1", "/settings", "/access",
        ];
        foreach (var path in closed)
        {
            var answer = await phone.Client.GetAsync(path, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
            await TestHost.RefusedAsync(HttpStatusCode.Forbidden, answer);
        }

        (HttpMethod Method, string Path, string? Body)[] actions =
        [
            (HttpMethod.Post, "/api/stations/1/actions", """{"kind":"void","number":1,"reason":"no"}"""),
            (HttpMethod.Post, "/api/stations/1/shots", """{"id":"b","arrowsBoard":10}"""),
            (HttpMethod.Post, "/api/stations/2/sessions", """{"bowler":"Ben","drill":"ten-shot-spread"}"""), (HttpMethod.Delete, "/api/drills/three-rings", null),
            (HttpMethod.Put, "/api/drills/three-rings", "{}"), (HttpMethod.Post, "/api/access/codes", """{"station":2}"""),
            (HttpMethod.Post, "/api/access/feeds", """{"name":"x","station":1}"""),
        ];
        foreach (var (method, path, body) in actions)
        {
            await TestHost.RefusedAsync(HttpStatusCode.Forbidden, await phone.SendAsync(method, path, body));
        }

        var version = JsonDocument.Parse(await coach.Client.GetStringAsync("/api/stations/1", TestContext.Current.CancellationToken)).RootElement.GetProperty("version").GetInt32();
        Assert.Equal(2, version);
    }

    [Fact]
    public async Task Pair_CodeUsedOrOver_IsRefused()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        using var coach = host.Browser();
        await coach.SignInAsync();
        async Task<string> CodeAsync() => (await TestHost.BodyAsync(await coach.PostAsync("/api/access/codes", """{"station":1}"""))).GetProperty("code").GetString()!;
        async Task<HttpStatusCode> PairAsync(string code)
        {
            using var phone = host.Browser();
            return (await phone.PostAsync("/api/access/pair", $$"""{"code":"{{code}}"}""")).StatusCode;
        }

        var (once, late, inTime) = (await CodeAsync(), await CodeAsync(), "");
        Assert.Equal(HttpStatusCode.OK, await PairAsync(once));
        Assert.Equal(HttpStatusCode.Unauthorized, await PairAsync(once));
        clock.Advance(TimeSpan.FromMinutes(10) - TimeSpan.FromSeconds(1));
        inTime = await CodeAsync();
        clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(HttpStatusCode.Unauthorized, await PairAsync(late));
        Assert.Equal(HttpStatusCode.OK, await PairAsync(inTime));
    }

    [Fact]
    public async Task Pair_AfterTwelveHours_ThePhoneIsNobody()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        using var coach = host.Browser();
        using var phone = host.Browser();
        await coach.SignInAsync();
        await phone.PairAsync(coach, 1);

        clock.Advance(TimeSpan.FromHours(12) - TimeSpan.FromSeconds(1));
        Assert.Equal("bowler", (await phone.MeAsync()).GetProperty("role").GetString());
        clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(JsonValueKind.Null, (await phone.MeAsync()).GetProperty("role").ValueKind);
    }

    [Fact]
    public async Task Pairing_TakenBack_OpenStreamEnds()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        using var coach = host.Browser();
        using var phone = host.Browser();
        await coach.SignInAsync();
        await phone.PairAsync(coach, 1);
        using var stream = await EventReader.OpenAsync(phone.Client, "/api/stations/1/live");
        await stream.NextAsync();

        var pairing = JsonDocument.Parse(await coach.Client.GetStringAsync("/api/access/pairings", TestContext.Current.CancellationToken)).RootElement[0];
        Assert.Equal(HttpStatusCode.OK, (await coach.SendAsync(HttpMethod.Delete, $"/api/access/pairings/{pairing.GetProperty("id").GetString()}")).StatusCode);
        await coach.PostAsync("/api/stations/1/sessions", """{"bowler":"Ann","drill":"ten-shot-spread"}""");

        // The change above may still be shown; nothing after it.
        while (await stream.NextAsync() is { } last)
        {
            Assert.Equal("waiting", last.Data.GetProperty("phase").GetString());
        }
    }

    [Fact]
    public async Task Feed_TokenOfOneStation_SendsItsShotsAndNothingElse()
    {
        await using var host = await TestHost.StartAsync(stations: 8, passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        foreach (var station in new[] { 7, 8 })
        {
            await coach.PostAsync($"/api/stations/{station}/sessions", """{"bowler":"Ann","drill":"ten-shot-spread"}""");
            await coach.PostAsync($"/api/stations/{station}/actions", """{"kind":"begin"}""");
        }

        var made = await TestHost.BodyAsync(await coach.PostAsync("/api/access/feeds", """{"name":"camera","station":7}"""));
        var (token, id) = (made.GetProperty("token").GetString()!, made.GetProperty("feed").GetProperty("id").GetString());

        Assert.Equal(HttpStatusCode.OK, (await host.ShotAsync("a", station: 7, token: token)).StatusCode);
        await TestHost.RefusedAsync(HttpStatusCode.Forbidden, await host.ShotAsync("a", station: 8, token: token));
        foreach (var path in new[] { "/api/stations/7", "/api/stations", "/api/stations/7/live", "/api/sessions", "/api/access/feeds" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Authorization = new("Bearer", token);
            var answer = await host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
            await TestHost.RefusedAsync(HttpStatusCode.Forbidden, answer);
        }

        Assert.Equal(HttpStatusCode.OK, (await coach.SendAsync(HttpMethod.Delete, $"/api/access/feeds/{id}")).StatusCode);
        Assert.Contains("revoked", await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.ShotAsync("b", station: 7, token: token)), StringComparison.Ordinal);
        Assert.DoesNotContain(token, await File.ReadAllTextAsync(Path.Combine(host.Folder, "feed-tokens.json"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task FormToken_MissingOrOfAnotherSignIn_IsRefused()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        var earlier = await coach.FormTokenAsync();
        await coach.PostAsync("/api/access/sign-out");
        await coach.SignInAsync();
        async Task<HttpResponseMessage> SendAsync(string? token)
        {
            var request = new HttpRequestMessage(HttpMethod.Post, "/api/access/codes") { Content = TestHost.Json("""{"station":1}""") };
            request.Headers.TryAddWithoutValidation("x-aimtrainer-form", token);
            return await coach.Client.SendAsync(request, TestContext.Current.CancellationToken);
        }

        await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await SendAsync(null));
        await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await SendAsync("made-up"));
        await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await SendAsync(earlier));
        Assert.Equal(HttpStatusCode.OK, (await SendAsync(await coach.FormTokenAsync())).StatusCode);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task FormToken_TwoPagesAskAtOnce_BothHold(bool paired)
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        using var phone = host.Browser();
        if (paired)
        {
            await phone.PairAsync(coach, 1);
        }

        // Two requests that leave before the answer of either has come: both carry the cookies of the sign-in, as this client without a jar sends them.
        var browser = paired ? phone : coach;
        var cookies = string.Join("; ", browser.Cookies.Select(each => $"{each.Name}={each.Value}"));
        var tokens = new List<string>();
        while (tokens.Count < 2)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "/api/access") { Headers = { { "Cookie", cookies } } };
            using var answer = await host.Client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.False(answer.Headers.Contains("Set-Cookie"));
            tokens.Add((await TestHost.BodyAsync(answer)).GetProperty("formToken").GetString()!);
        }

        // The first one holds too, though the second was asked for after it.
        using var leaving = new HttpRequestMessage(HttpMethod.Post, "/api/access/sign-out") { Headers = { { "Cookie", cookies }, { "x-aimtrainer-form", tokens[0] } } };
        Assert.Equal(HttpStatusCode.OK, (await host.Client.SendAsync(leaving, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Theory]
    [InlineData("Origin", "https://elsewhere.example")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Change_FromAPageElsewhere_IsRefused(string header, string value)
    {
        await using var host = await TestHost.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/access/codes") { Content = TestHost.Json("""{"station":1}""") };
        request.Headers.Add(header, value);

        var answer = await host.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Contains("allowed", await TestHost.RefusedAsync(HttpStatusCode.Forbidden, answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("elsewhere.example")]
    [InlineData("192.168.1.20")]
    [InlineData("localhost.elsewhere.example:80")]
    public async Task HostHeader_OfAnotherName_IsRefused(string name)
    {
        await using var host = await TestHost.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/stations");
        request.Headers.Host = name;

        await TestHost.RefusedAsync(HttpStatusCode.MisdirectedRequest, await host.Client.SendAsync(request, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/sign-in")]
    [InlineData("/access")]
    [InlineData("/api/stations")]
    [InlineData("/assets/live.js")]
    [InlineData("/nothing/here")]
    public async Task Answer_Always_TellsTheBrowserWhatNotToDo(string path)
    {
        await using var host = await TestHost.StartAsync();

        var headers = (await host.Client.GetAsync(path, TestContext.Current.CancellationToken)).Headers;

        Assert.Contains("script-src 'self';", headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.Equal("nosniff", headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("DENY", headers.GetValues("X-Frame-Options").Single());
        Assert.Equal("no-referrer", headers.GetValues("Referrer-Policy").Single());
        Assert.False(headers.Contains("Server"));
    }

    [Fact]
    public async Task Pages_Always_HoldNoScriptOrStyleOfTheirOwn()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        string[] paths =
        [
            "/", "/lane/1", "/lane/1/start", "/drills", "/drills/three-rings", "/bowlers", "/records", "/projector", "/settings", "/access", "/sign-in", "/pair", "/bowler/1",
        ];
        foreach (var path in paths)
        {
            var text = await host.Client.GetStringAsync(path, TestContext.Current.CancellationToken);
            Assert.DoesNotMatch("<script(?![^>]*(src=|application/json))|<style|\\sstyle=|\\son[a-z]+=", text);
        }
    }

    [Fact]
    public async Task Audit_EveryActionOfACoach_WhoWhenWhatFromWhere()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(passphrase: true, clock: clock);
        using var coach = host.Browser();
        await coach.SignInAsync();
        await coach.PostAsync("/api/stations/1/sessions", """{"bowler":"Ann","drill":"ten-shot-spread"}""");
        await coach.PostAsync("/api/stations/1/actions", """{"kind":"begin"}""");
        await coach.PostAsync("/api/stations/1/actions", """{"kind":"void","number":5,"reason":"no such"}""");

        var text = await File.ReadAllLinesAsync(Path.Combine(host.Folder, "audit.jsonl"), TestContext.Current.CancellationToken);
        var lines = text.Select(line => JsonDocument.Parse(line).RootElement).ToList();

        Assert.Equal(
            ["POST /api/access/sign-in 200", "POST /api/stations/1/sessions 201", "POST /api/stations/1/actions 200", "POST /api/stations/1/actions 409"],
            lines.Select(line => $"{line.GetProperty("what").GetString()} {line.GetProperty("status").GetInt32()}"));
        Assert.All(lines, line => Assert.Equal(("2026-03-01T18:00:00+00:00", "127.0.0.1"), (line.GetProperty("at").GetString(), line.GetProperty("from").GetString())));
        Assert.StartsWith("coach ", lines[2].GetProperty("who").GetString(), StringComparison.Ordinal);
        Assert.StartsWith("Begin: step 1 of session ", lines[2].GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Audit_FileIsFull_IsPutAsideAndTheOldestGoes()
    {
        var folder = Directory.CreateTempSubdirectory("aimtrainer-audit-").FullName;
        using (var audit = new Audit(folder, TimeProvider.System, Microsoft.Extensions.Logging.Abstractions.NullLogger<Audit>.Instance) { TurnAt = 1000 })
        {
            for (var i = 0; i < 200; i++)
            {
                audit.Write(new AuditLine($"POST /{i}", 200, "coach", "127.0.0.1", null));
            }
        }

        var files = Directory.GetFiles(folder).Select(Path.GetFileName).Order().ToList();
        Assert.Equal(["audit.1.jsonl", "audit.2.jsonl", "audit.3.jsonl", "audit.4.jsonl", "audit.5.jsonl", "audit.6.jsonl", "audit.7.jsonl", "audit.jsonl"], files);
        Assert.Contains("POST /199", File.ReadAllText(Path.Combine(folder, "audit.jsonl")), StringComparison.Ordinal);
        Assert.All(Directory.GetFiles(folder), file => Assert.True(new FileInfo(file).Length <= 1000));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Secrets_InLogAuditAndFiles_AreNowhere()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        using var phone = host.Browser();
        await coach.PostAsync("/api/access/sign-in", """{"passphrase":"a wrong but secret phrase"}""");
        await coach.SignInAsync();
        var code = (await TestHost.BodyAsync(await coach.PostAsync("/api/access/codes", """{"station":1}"""))).GetProperty("code").GetString()!;
        await phone.PostAsync("/api/access/pair", $$"""{"code":"{{code}}"}""");
        var token = (await TestHost.BodyAsync(await coach.PostAsync("/api/access/feeds", """{"name":"camera","station":1}"""))).GetProperty("token").GetString()!;
        await host.ShotAsync("a", token: token);
        await host.ShotAsync("a", token: "feed-not-a-token-of-ours");
        string[] secrets =
        [
            TestHost.Words, "a wrong but secret phrase", $"\"{code}\"", token, "feed-not-a-token-of-ours",
            coach.Cookies["aimtrainer.pass"]!.Value, phone.Cookies["aimtrainer.pass"]!.Value,
        ];

        Assert.Contains("/api/access/sign-in", host.Log.All, StringComparison.Ordinal);
        var files = Directory.GetFiles(host.Folder, "*.json*", SearchOption.AllDirectories);
        Assert.True(files.Length >= 4);
        foreach (var secret in secrets)
        {
            Assert.DoesNotContain(secret, host.Log.All, StringComparison.Ordinal);
            Assert.All(files, file => Assert.DoesNotContain(secret, File.ReadAllText(file), StringComparison.Ordinal));
        }

        if (!OperatingSystem.IsWindows())
        {
            foreach (var file in files)
            {
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
            }

            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Path.Combine(host.Folder, "keys")));
        }
    }

    [Fact]
    public async Task Shots_FasterThanAnyLane_AreHeldBackWithRetryAfter()
    {
        await using var host = await TestHost.StartAsync();
        var answers = await Task.WhenAll(Enumerable.Range(0, 900).Select(
            _ => host.Client.PostAsync("/api/stations/9/shots", TestHost.Json("{}"), TestContext.Current.CancellationToken)));

        var held = answers.Where(answer => answer.StatusCode == HttpStatusCode.TooManyRequests).ToList();
        Assert.NotEmpty(held);
        await TestHost.RefusedAsync(HttpStatusCode.TooManyRequests, held[0]);
        Assert.NotNull(held[0].Headers.RetryAfter);
        Assert.Equal(900, held.Count + answers.Count(answer => answer.StatusCode == HttpStatusCode.NotFound));
    }
}
