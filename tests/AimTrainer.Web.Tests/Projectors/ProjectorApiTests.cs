using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Output;
using AimTrainer.Setup;
using Json.Schema;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Web.Tests;

/// <summary>A calibration in another process, set up through the host.</summary>
public sealed class ProjectorApiTests
{
    private const string Set = """{"kind":"set"}""";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Action_OfTheCoach_IsDoneInTheOtherProcessAndAnsweredWithItsState()
    {
        await using var host = await TestHost.StartAsync();
        await using var door = await TestedDoor.OpenAsync(host, 2, "near");

        var listed = Assert.Single((await host.GetAsync("/api/projectors")).EnumerateArray());
        Assert.Equal((2, "near"), (listed.GetProperty("station").GetInt32(), listed.GetProperty("projector").GetString()));
        var answer = await ActAsync(host, "near", """{"kind":"nudge","direction":"left","step":"coarse"}""");
        Assert.Equal(628, answer.GetProperty("crosshair").GetProperty("x").GetDouble());
        Assert.Equal(628, door.Desk.Now.Placing.Crosshair.X);

        // What is done at the window's own keys shows as well.
        using var stream = await EventReader.OpenAsync(host.Client, "/api/projectors/live");
        await stream.NextAsync();
        door.Desk.Apply(new PlacingAction.Set());
        while ((await stream.NextAsync())!.Value.Data[0].GetProperty("state").GetProperty("current").GetInt32() != 2)
        {
            // A picture of before.
        }

        Assert.Equal(2, (await host.GetAsync("/api/projectors/2/near")).GetProperty("current").GetInt32());
    }

    [Theory]
    [InlineData("""{"kind":"dance"}""", "found")]
    [InlineData("""{"kind":"nudge"}""", "found")]
    [InlineData("""{"kind":7}""", "$.kind")]
    [InlineData("""[]""", "found")]
    [InlineData("""{"kind":"set","extra":1}""", "found")]
    public async Task Action_ThatIsNone_IsRefusedWithWhatIsAllowed(string action, string why)
    {
        await using var host = await TestHost.StartAsync();
        await using var door = await TestedDoor.OpenAsync(host);
        var before = door.Desk.Now.Version;

        var detail = await TestHost.RefusedAsync(HttpStatusCode.BadRequest, await host.Client.PostAsync("/api/projectors/1/lane/actions", TestHost.Json(action), Cancel));

        Assert.Contains(why, detail, StringComparison.Ordinal);
        Assert.Contains("allowed", detail, StringComparison.Ordinal);
        Assert.Equal(before, door.Desk.Now.Version);
    }

    [Fact]
    public async Task State_AndBodies_AreAsTheDescriptionSays()
    {
        await using var host = await TestHost.StartAsync();
        await using var door = await TestedDoor.OpenAsync(host);
        var schemas = (await host.GetAsync("/openapi/v1.json")).GetProperty("components").GetProperty("schemas");
        bool Holds(string schema, string json) => JsonSchema.FromText(schemas.GetProperty(schema).GetRawText()).Evaluate(JsonDocument.Parse(json).RootElement).IsValid;
        Assert.True(Holds("Projectors", (await host.GetAsync("/api/projectors")).GetRawText()));

        // A state with every member: a map, a mark left out, refusals, a saved map.
        PlaceFive(door);
        string[] actions =
        [
            """{"kind":"skip"}""", """{"kind":"check","on":true}""", """{"kind":"chooseDistortion","terms":1}""", """{"kind":"chooseDistortion","terms":0}""",
            """{"kind":"accept"}""", """{"kind":"undo"}""", """{"kind":"abandon"}""",
        ];
        foreach (var action in actions)
        {
            Assert.True(Holds("CalibrationAction", action), action);
            var state = (await ActAsync(host, "lane", action, 1)).GetRawText();
            Assert.True(Holds("Calibration", state), state);
        }

        Assert.False(Holds("CalibrationAction", """{"kind":"nudge","direction":"left"}"""));
        Assert.False(Holds("Calibration", "{}"));
        Assert.True(Holds("CalibrationReport", """{"attachment":"x","answers":[{"number":1,"understood":true}],"state":{"station":1,"projector":"lane","version":4}}"""));
    }

    [Fact]
    public async Task Distances_OfACoarsePicture_SayWhatCannotBeShown()
    {
        await using var host = await TestHost.StartAsync();
        await using var door = await TestedDoor.OpenAsync(host);
        PlaceFive(door);

        // The calibration tells its host of each step in its own time.
        var state = await host.GetAsync("/api/projectors/1/lane");
        for (var tries = 0; tries < 2000 && !state.TryGetProperty("distances", out _); tries++)
        {
            state = await host.GetAsync("/api/projectors/1/lane");
        }

        var distances = state.GetProperty("distances").EnumerateArray().ToList();

        // The picture of the lane is 120 pixels wide at the foul line and 48 at the pins, for 39 boards: 3.08 and 1.23 pixels a board.
        var near = distances.Single(at => at.GetProperty("feet").GetDouble() == 0);
        var far = distances.Single(at => at.GetProperty("feet").GetDouble() == 60);
        Assert.Equal(("honest", "tooNarrow"), (near.GetProperty("oneBoard").GetString(), far.GetProperty("oneBoard").GetString()));
        Assert.InRange(far.GetProperty("narrowestTargetBoards").GetDouble(), 3 / (48 / 39.0) * 0.98, 3 / (48 / 39.0) * 1.02);
    }

    [Fact]
    public async Task Who_NobodyBowlerAndFeed_MayNeitherSeeNorActNorAttach()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        using var phone = host.Browser();
        await coach.SignInAsync();
        await phone.PairAsync(coach, 1);
        await using var door = await TestedDoor.OpenAsync(host, code: await CodeAsync(coach, 1));
        var feed = (await TestHost.BodyAsync(await coach.PostAsync("/api/access/feeds", """{"name":"camera","station":1}"""))).GetProperty("token").GetString();
        (HttpMethod Method, string Path, string? Body)[] calls =
        [
            (HttpMethod.Get, "/api/projectors", null), (HttpMethod.Get, "/api/projectors/live", null), (HttpMethod.Get, "/api/projectors/1/lane", null),
            (HttpMethod.Post, "/api/projectors/1/lane/actions", Set), (HttpMethod.Post, "/api/projectors/1/lane/attachment", "{}"),
            (HttpMethod.Put, "/api/projectors/1/lane/state", "{}"),
        ];
        foreach (var (method, path, body) in calls)
        {
            await TestHost.RefusedAsync(HttpStatusCode.Forbidden, await phone.SendAsync(method, path, body));
            await TestHost.RefusedAsync(HttpStatusCode.Forbidden, await SendAsync(host, method, path, body, feed));
            await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await SendAsync(host, method, path, body, null));
        }

        Assert.Equal(0, door.Desk.Now.Placing.SetCount);
        Assert.Equal(HttpStatusCode.OK, (await coach.PostAsync("/api/projectors/1/lane/actions", Set)).StatusCode);
        Assert.Equal(1, door.Desk.Now.Placing.SetCount);
    }

    [Fact]
    public async Task Token_OfAProjector_OpensItsOwnStationsCalibrationAndNothingElseUntilTakenBack()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        using var coach = host.Browser();
        await coach.SignInAsync();
        var code = await CodeAsync(coach, 1);

        // A projector's code pairs no phone, and a phone's lets no projector in.
        using var phone = host.Browser();
        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await phone.PostAsync("/api/access/pair", $$"""{"code":"{{code}}"}"""));
        var phones = (await TestHost.BodyAsync(await coach.PostAsync("/api/access/codes", """{"station":1}"""))).GetProperty("code").GetString();
        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await host.Client.PostAsync("/api/access/projectors", TestHost.Json($$"""{"code":"{{phones}}"}"""), Cancel));
        var letIn = await TestHost.BodyAsync(await host.Client.PostAsync("/api/access/projectors", TestHost.Json($$"""{"code":"{{code}}"}"""), Cancel));
        var token = letIn.GetProperty("token").GetString()!;

        (HttpMethod Method, string Path)[] closed =
        [
            (HttpMethod.Get, "/api/projectors"), (HttpMethod.Get, "/api/stations/1"), (HttpMethod.Post, "/api/stations/1/shots"),
            (HttpMethod.Post, "/api/projectors/2/lane/attachment"),
        ];
        foreach (var (method, path) in closed)
        {
            await TestHost.RefusedAsync(HttpStatusCode.Forbidden, await SendAsync(host, method, path, method == HttpMethod.Post ? "{}" : null, token));
        }

        // Neither does it work as a browser's cookie.
        using var cookie = new HttpRequestMessage(HttpMethod.Get, "/api/access");
        cookie.Headers.Add("Cookie", $"aimtrainer.pass={token}");
        Assert.Equal(JsonValueKind.Null, (await TestHost.BodyAsync(await host.Client.SendAsync(cookie, Cancel))).GetProperty("role").ValueKind);
        var empty = await SendAsync(host, HttpMethod.Post, "/api/projectors/1/lane/attachment", "{}", token);
        Assert.Contains("found no \"state\"", await TestHost.RefusedAsync(HttpStatusCode.BadRequest, empty), StringComparison.Ordinal);

        var pairing = JsonDocument.Parse(await coach.Client.GetStringAsync("/api/access/pairings", Cancel)).RootElement.EnumerateArray().Single();
        Assert.Equal("projector", pairing.GetProperty("role").GetString());
        Assert.Equal(HttpStatusCode.OK, (await coach.SendAsync(HttpMethod.Delete, $"/api/access/pairings/{pairing.GetProperty("id").GetString()}")).StatusCode);
        await TestHost.RefusedAsync(HttpStatusCode.Unauthorized, await SendAsync(host, HttpMethod.Post, "/api/projectors/1/lane/attachment", "{}", token));
        Assert.DoesNotContain(token, await File.ReadAllTextAsync(Path.Combine(host.Folder, "passes.json"), Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Link_HostStartsAgain_IsThereAgainByItself()
    {
        await using var host = await TestHost.StartAsync();
        await using var door = await TestedDoor.OpenAsync(host);

        await host.RestartAsync();

        await TestedDoor.UntilAsync(() => Attached(host) == 1);
        Assert.Equal(2, (await ActAsync(host, "lane", Set, 1)).GetProperty("current").GetInt32());
    }

    [Fact]
    public async Task Link_Closed_LeavesTheList()
    {
        await using var host = await TestHost.StartAsync();
        await using var door = await TestedDoor.OpenAsync(host);

        await door.CloseAsync();

        await TestedDoor.UntilAsync(() => Attached(host) == 0);
        var gone = await host.Client.PostAsync("/api/projectors/1/lane/actions", TestHost.Json(Set), Cancel);
        Assert.Contains("aimtrainer calibrate --host", await TestHost.RefusedAsync(HttpStatusCode.NotFound, gone), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Link_AnotherOfTheSameProjector_TakesItsPlaceAndTheOlderSaysSo()
    {
        await using var host = await TestHost.StartAsync();
        await using var older = await TestedDoor.OpenAsync(host);
        await using var newer = await TestedDoor.OpenAsync(host);

        await TestedDoor.UntilAsync(() => older.Said.Any(text => text.Contains("another calibration of this projector took its place", StringComparison.Ordinal)));
        await ActAsync(host, "lane", Set, 1);

        Assert.Equal((0, 1), (older.Desk.Now.Placing.SetCount, newer.Desk.Now.Placing.SetCount));
        Assert.Single((await host.GetAsync("/api/projectors")).EnumerateArray());
    }

    [Fact]
    public async Task Open_HostThatIsNotThereOrWantsACode_IsSaidWithWhatToDo()
    {
        await using var host = await TestHost.StartAsync(passphrase: true);
        var silent = await Assert.ThrowsAsync<UserException>(() => ProjectorLink.OpenAsync(new Uri("http://127.0.0.1:9"), () => null, _ => { }, TimeProvider.System, Cancel));
        Assert.Contains("allowed: the address of a console that runs", silent.Message, StringComparison.Ordinal);
        var without = await Assert.ThrowsAsync<UserException>(() => ProjectorLink.OpenAsync(host.Address, () => null, _ => { }, TimeProvider.System, Cancel));
        Assert.Contains("the coach makes one on the console's Projector page", without.Message, StringComparison.Ordinal);
        var wrong = await Assert.ThrowsAsync<UserException>(() => ProjectorLink.OpenAsync(host.Address, () => "12345x", _ => { }, TimeProvider.System, Cancel));
        Assert.Contains("allowed: a code of six digits", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Action_ProgramThatDoesNotAnswer_IsToldAsUnknownNotAsDone()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero));
        await using var host = await TestHost.StartAsync(clock: clock);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/projectors/1/lane/attachment")
        {
            Content = TestHost.Json("""{"state":{"station":1,"projector":"lane","version":0}}"""),
        };
        using var line = await host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Cancel);
        using var reader = new StreamReader(await line.Content.ReadAsStreamAsync(Cancel));
        Assert.Equal("event: attached", await reader.ReadLineAsync(Cancel));

        var acting = host.Client.PostAsync("/api/projectors/1/lane/actions", TestHost.Json("{\n\"kind\":\n\"set\"}"), Cancel);
        while (await reader.ReadLineAsync(Cancel) != "event: action")
        {
            // The end of the first event.
        }

        await reader.ReadLineAsync(Cancel);
        Assert.Equal("data: {\"kind\":\"set\"}", await reader.ReadLineAsync(Cancel));
        clock.Advance(AttachedProjector.Patience);

        Assert.Contains("look at its state before you do it again", await TestHost.RefusedAsync(HttpStatusCode.GatewayTimeout, await acting), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Audit_OfASetUp_HasWhoCameAndWhatWasDoneButNotEachStepOfTheCrosshair()
    {
        await using var host = await TestHost.StartAsync();
        await using (var door = await TestedDoor.OpenAsync(host))
        {
            await ActAsync(host, "lane", """{"kind":"nudge","direction":"left","step":"fine"}""", 1);
            await ActAsync(host, "lane", Set, 1);
            await host.Client.PostAsync("/api/projectors/1/lane/actions", TestHost.Json("""{"kind":"nudge"}"""), Cancel);
            await door.CloseAsync();
        }

        var file = Path.Combine(host.Folder, "audit.jsonl");
        string[] details;
        do
        {
            await Task.Yield();
            details = [.. File.ReadAllLines(file).Select(line => JsonDocument.Parse(line).RootElement)
                .Select(line => $"{line.GetProperty("status").GetInt32()} {line.GetProperty("detail").GetString()}")];
        }
        while (!details.Any(detail => detail.EndsWith("has left", StringComparison.Ordinal)));

        Assert.Equal(
            [
                "200 projector lane of station 1 can be set up from pages", "200 set, projector lane of station 1", "400 nudge, projector lane of station 1",
                "200 projector lane of station 1 has left",
            ],
            details);
    }

    private static int Attached(TestHost host) => host.Services.GetRequiredService<AttachedProjectors>().All.Count;

    /// <summary>The four corners of the lane, and a fifth mark where the map has it.</summary>
    private static void PlaceFive(TestedDoor door)
    {
        foreach (var (x, y) in (ReadOnlySpan<(double, double)>)[(700, 420), (580, 420), (616, 324), (664, 324)])
        {
            while (door.Desk.Now.Placing.Crosshair is var at && (at.X != x || at.Y != y))
            {
                var (dx, dy) = (x - at.X, y - at.Y);
                var direction = dx != 0 ? dx < 0 ? NudgeDirection.Left : NudgeDirection.Right : dy < 0 ? NudgeDirection.Up : NudgeDirection.Down;
                door.Desk.Apply(new PlacingAction.Nudge(direction, Math.Abs(dx != 0 ? dx : dy) >= 12 ? NudgeStep.Coarse : NudgeStep.Fine));
            }

            door.Desk.Apply(new PlacingAction.Set());
        }

        door.Desk.Apply(new PlacingAction.Set());
    }

    private static async Task<string> CodeAsync(Browser coach, int station) =>
        (await TestHost.BodyAsync(await coach.PostAsync("/api/access/codes", $$"""{"station":{{station}},"for":"projector"}"""))).GetProperty("code").GetString()!;

    private static async Task<JsonElement> ActAsync(TestHost host, string projector, string action, int station = 2)
    {
        var answer = await host.Client.PostAsync($"/api/projectors/{station}/{projector}/actions", TestHost.Json(action), Cancel);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Cancel));
        return await TestHost.BodyAsync(answer);
    }

    private static async Task<HttpResponseMessage> SendAsync(TestHost host, HttpMethod method, string path, string? body, string? token)
    {
        var request = new HttpRequestMessage(method, path) { Content = body is null ? null : TestHost.Json(body) };
        request.Headers.Authorization = token is null ? null : new AuthenticationHeaderValue("Bearer", token);
        return await host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Cancel);
    }
}
