using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using OpenCvSharp;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A console on the network: the coach signs in, a bowler's phone is paired and can do nothing that is the coach's.</summary>
public sealed class AccessTests(Chromium chromium)
{
    private const string Words = "correct horse battery staple";

    [Fact]
    public async Task Phone_Paired_SeesItsLaneAndDoesNothingOfTheCoach()
    {
        await using var console = await ServedConsole.OnNetworkAsync(Words);
        await using var coach = await chromium.UserAsync(console, Screen.Tablet);
        await using var bowler = await chromium.UserAsync(console, Screen.Phone);
        var page = await SignInAsync(coach);
        await AskAsync(page, "POST", "/api/stations/1/sessions", """{"bowler":"Mira","drill":"ten-shot-spread","seed":1}""", 201);
        await AskAsync(page, "POST", "/api/stations/1/actions", """{"kind":"begin"}""", 200);

        // A wrong code is refused in words; the right one, as the picture holds it, leads to the bowler's view.
        var (code, address) = await CodeAsync(page);
        var phone = await bowler.OpenAsync("/pair", live: false);
        await phone.GetByLabel("Code from the coach").FillAsync(code == "000000" ? "000001" : "000000");
        await phone.Button("Pair").TapAsync();
        await Expect(phone.Locator("#wrong")).ToContainTextAsync("allowed: a code of six digits that the coach made in the last ten minutes");
        await phone.GotoAsync(address);
        await Expect(phone.GetByLabel("Code from the coach")).ToHaveValueAsync(code);
        Assert.DoesNotContain(code, phone.Url, StringComparison.Ordinal);
        await phone.Button("Pair").TapAsync();
        await phone.WaitForURLAsync("**/bowler/1");
        await Expect(phone.Locator("#now")).ToContainTextAsync("Board");

        // The bowler's view is live while the coach logs, and tells only what the drill allows.
        await AskAsync(page, "POST", "/api/stations/1/shots", """{"id":"one","arrowsBoard":10}""", 200);
        await Expect(phone.Locator("#then")).ToContainTextAsync("Shot 2");
        await Expect(phone.Locator("#last")).ToHaveTextAsync("Nothing yet; the drill says when.");

        // Every page of the coach sends the phone back to its own.
        string[] coachs =
        [
            "/", "/lane/1", "/lane/1/start", "/lane/2", "/bowler/2", "/drills", "/drills/three-rings", "/drills/three-rings/edit", "/bowlers", "/records",
            "/projector", "/access", "/settings",
        ];
        foreach (var path in coachs)
        {
            await phone.GotoAsync(path);
            Assert.Equal("/bowler/1", new Uri(phone.Url).AbsolutePath);
        }

        // Every call of the API that is not this lane's bowler's view, with the phone's own cookies and its form token.
        foreach (var (method, path) in await CallsAsync(console))
        {
            var (status, type, detail) = await CallAsync(phone, method, path, method is "GET" or "DELETE" ? null : "{}");
            Assert.True(status == 403, $"{method} {path}: {status} {detail}");
            Assert.Equal("application/problem+json", type);
            Assert.Matches("^(who|view): found .+; allowed", detail);
        }

        await AskAsync(phone, "POST", "/api/stations/1/actions", """{"kind":"void","number":1,"reason":"mine"}""", 403);
        await AskAsync(phone, "POST", "/api/stations/1/shots", """{"id":"two","arrowsBoard":10}""", 403);
        using var state = JsonDocument.Parse(await AskAsync(page, "GET", "/api/stations/1", null, 200));
        Assert.Equal((2, 2), (state.RootElement.GetProperty("version").GetInt32(), state.RootElement.GetProperty("nextNumber").GetInt32()));

        // The code was used: another phone does not get in by it, and is told so.
        await using var stranger = await chromium.UserAsync(console, Screen.Phone);
        var other = await stranger.OpenAsync("/pair", live: false);
        await other.GetByLabel("Code from the coach").FillAsync(code);
        await other.Button("Pair").TapAsync();
        await Expect(other.Locator("#wrong")).ToContainTextAsync("was used or is over");
        await other.GotoAsync("/bowler/1");
        await other.WaitForURLAsync("**/sign-in?next=*");

        // Taken back, the open page goes dark within a beat, and the phone is nobody.
        await phone.GotoAsync("/bowler/1");
        await phone.Locator("html[data-link=up]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        await page.GotoAsync("/access");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Unpair: Phone, lane 1") }).TapAsync();
        await Expect(page.GetByText("Nothing is paired.")).ToBeVisibleAsync();
        await phone.WaitForURLAsync("**/sign-in?next=*");
        await AskAsync(phone, "GET", "/api/stations/1", null, 401);
        Assert.True(!coach.Complaints.Any(), string.Join("; ", coach.Complaints));
    }

    [Fact]
    public async Task Code_AsAPicture_HoldsTheAddressAPhoneReaches()
    {
        await using var console = await ServedConsole.OnNetworkAsync(Words);
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await SignInAsync(coach);
        var (code, _) = await CodeAsync(page);
        var png = await page.Locator(".qr").ScreenshotAsync();

        // Source: the QR reader of OpenCV 4.13, on the very pixels that a camera would see.
        using var picture = Cv2.ImDecode(png, ImreadModes.Grayscale);
        using var reader = new QRCodeDetector();
        var read = reader.DetectAndDecode(picture, out _);
        Assert.Equal($"{console.Address}/pair#{code}", read);
        Assert.InRange(picture.Width, 200, 360);
    }

    [Fact]
    public async Task SignIn_WrongThenRight_LeadsToWhereOneWanted()
    {
        await using var console = await ServedConsole.OnNetworkAsync(Words);
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/records", live: false);
        await page.WaitForURLAsync("**/sign-in?next=%2Frecords");
        await page.GetByLabel("Passphrase").FillAsync("something else entirely");
        await page.Button("Sign in").TapAsync();
        await Expect(page.Locator("#wrong")).ToContainTextAsync("allowed: the one that was set with: aimtrainer passphrase");
        await page.GetByLabel("Passphrase").FillAsync(Words);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/records");
        await page.GotoAsync("/settings");
        await Expect(page.GetByText("Whoever knows the passphrase, also at this machine.")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Access page" }).TapAsync();
        await page.Button("Sign out here").TapAsync();
        await page.WaitForURLAsync("**/sign-in");
        await AskAsync(page, "GET", "/api/stations", null, 401);
    }

    [Fact]
    public async Task Settings_WithoutAPassphrase_SayThatEverybodyHereIsTheCoach()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/settings", live: false);
        await Expect(page.GetByText("Everybody at this machine is the coach")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Settings" }).TapAsync();
        await page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "Access" }).TapAsync();
        await Expect(page.GetByText("Everybody at this machine is the coach")).ToBeVisibleAsync();
        await page.Button("Make a code").TapAsync();
        await Expect(page.Locator("#code-made")).ToContainTextAsync("This host listens on this machine only, so a phone cannot reach it yet.");
    }

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task AccessPages_InBothRooms_AreAccessibleAndFit(string size, bool bright)
    {
        await using var console = await ServedConsole.OnNetworkAsync(Words);
        await using var coach = await chromium.UserAsync(console, Screen.Named(size), bright);
        await using var phone = await chromium.UserAsync(console, Screen.Phone);
        await PageTests.CheckAsync(await coach.OpenAsync("/sign-in", live: false), "sign-in", size, bright);
        await PageTests.CheckAsync(await coach.OpenAsync("/pair", live: false), "pair", size, bright);
        var page = await SignInAsync(coach);
        var (code, _) = await CodeAsync(page);
        var pairing = await phone.OpenAsync($"/pair#{code}", live: false);
        await pairing.Button("Pair").TapAsync();
        await pairing.WaitForURLAsync("**/bowler/1");
        await page.ReloadAsync();
        await CodeAsync(page);
        await page.GetByLabel("Name").FillAsync("lane camera");
        await page.Button("Make a token").TapAsync();
        await Expect(page.Locator("#feeds li")).ToHaveCountAsync(1);
        await Expect(page.Locator("#pairings li")).ToHaveCountAsync(1);
        await PageTests.CheckAsync(page, "access-made", size, bright);
        Assert.Empty(coach.Complaints);
    }

    /// <summary>Signs in, and opens the page of codes and tokens.</summary>
    private static async Task<IPage> SignInAsync(BrowserUser coach)
    {
        var page = await coach.OpenAsync("/sign-in?next=/access", live: false);
        await page.GetByLabel("Passphrase").FillAsync(Words);
        await page.Button("Sign in").TapAsync();
        await page.WaitForURLAsync(url => new Uri(url).AbsolutePath == "/access");
        return page;
    }

    private static async Task<(string Code, string Address)> CodeAsync(IPage page)
    {
        await page.Button("Make a code").TapAsync();
        await Expect(page.Locator(".qr svg")).ToBeVisibleAsync();
        var code = (await page.Locator("#code-made .digits").TextContentAsync())!.Replace(" ", "", StringComparison.Ordinal);
        Assert.Matches("^[0-9]{6}$", code);
        return (code, $"/pair#{code}");
    }

    /// <summary>Every call that the host describes, but those that are for anybody and the bowler's own of lane 1; lanes, names and ids filled in.</summary>
    private static async Task<List<(string Method, string Path)>> CallsAsync(ServedConsole console)
    {
        using var document = JsonDocument.Parse(await console.GetAsync("/openapi/v1.json"));
        var calls = document.RootElement.GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject().Select(
                call => (Path: path.Name, Method: call.Name.ToUpperInvariant(), Who: call.Value.GetProperty("description").GetString()!)))
            .Where(call => call.Who.StartsWith("For the coach", StringComparison.Ordinal)).ToList();
        Assert.True(calls.Count >= 25, $"{calls.Count} calls");
        return
        [
            .. calls.Where(call => !call.Who.Contains("bowler", StringComparison.Ordinal)).Select(call => (call.Method, Filled(call.Path, "1"))),
            .. calls.Where(call => call.Who.Contains("bowler", StringComparison.Ordinal)).Select(call => (call.Method, Filled(call.Path, "2"))),
            ("GET", "/api/stations/1/live?view=coach"),
        ];

        static string Filled(string path, string station) => Regex.Replace(path.Replace("{station}", station, StringComparison.Ordinal), "\\{[a-zA-Z]+\\}", "three-rings");
    }

    private static async Task<string> AskAsync(IPage page, string method, string path, string? json, int status)
    {
        var (found, _, text) = await CallAsync(page, method, path, json);
        Assert.True(found == status, $"{method} {path}: {found} {text}");
        return text;
    }

    /// <summary>Asks with the cookies and the form token of the page's own browser, as a page of ours does.</summary>
    private static async Task<(int Status, string Type, string Text)> CallAsync(IPage page, string method, string path, string? json)
    {
        var answer = await page.EvaluateAsync<string[]>(
            """
            async ([method, path, json]) => {
              // Asked once a page, as our own pages do.
              const { formToken } = await (globalThis.whoIAm ??= fetch('/api/access').then(said => said.json()));
              const headers = { 'content-type': 'application/json', ...(formToken ? { 'x-aimtrainer-form': formToken } : {}) };
              const answer = await fetch(path, { method, headers, body: json ?? undefined });
              const type = answer.headers.get('content-type') ?? '';
              if (type.startsWith('text/event-stream')) return [String(answer.status), type, 'a stream'];
              const text = await answer.text();
              return [String(answer.status), type, answer.ok ? text : JSON.parse(text).detail];
            }
            """,
            new[] { method, path, json });
        return (int.Parse(answer[0], System.Globalization.CultureInfo.InvariantCulture), answer[1], answer[2]);
    }
}
