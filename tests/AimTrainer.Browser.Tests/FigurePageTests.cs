using System.Globalization;
using System.Text;
using System.Text.Json;
using Microsoft.Playwright;

namespace AimTrainer.Browser.Tests;

/// <summary>Figures of a session and progress of a bowler: accessible, live, and honest about what few shots cannot tell.</summary>
public sealed class FigurePageTests(Chromium chromium)
{
    private const int Weeks = 9;

    // An invented scenario: nine weeks of a test whose spread falls, with one misread in it.
    private const string Bowler = "Ann Lee";

    [Fact]
    public async Task FigurePages_InBothRooms_AreAccessibleAndFit()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.KillAsync();
        for (var week = 0; week < Weeks; week++)
        {
            var file = console.File($"week-{week}.csv", Session(week));
            await console.RunAsync("shots", "import", file, "--drill", "session-start-test", "--bowler", Bowler);
        }

        await console.StartAgainAsync();
        using var listed = JsonDocument.Parse(await console.GetAsync($"/api/sessions?bowler={Uri.EscapeDataString(Bowler)}"));
        var session = listed.RootElement[2].GetProperty("sessionId").GetString();
        var progress = $"/bowlers/{Uri.EscapeDataString(Bowler)}";
        (string Name, string Path)[] pages =
        [
            ("bowler-progress", $"{progress}?starts=2026-03-02&weeks=10&sessionsAWeek=1&goalSpreadBoards=1.2"), ("bowler-early-late", $"{progress}?by=ten"),
            ("bowler-line", $"{progress}?by=line&from=2026-03-10"), ("record-figures", $"/records/{session}"),
        ];
        var complaints = new List<string>();
        foreach (var (size, bright) in new[] { ("phone", false), ("tablet", true) })
        {
            await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
            foreach (var (name, path) in pages)
            {
                var page = await user.OpenAsync(path, live: name == "record-figures");
                await PageTests.CheckAsync(page, name, size, bright);
                await page.CloseAsync();
            }

            complaints.AddRange(user.Complaints);
        }

        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Progress_OfABowler_LeadsFromThePeriodToAFile()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        await console.ShotAsync(1, "a", (15, 11));
        await using var user = await chromium.UserAsync(console, Screen.Desk);
        var page = await user.OpenAsync("/bowlers");
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Mira", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "ball", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#apart-title")).ToHaveTextAsync("Accuracy by ball");
        await page.GetByLabel("From (UTC)").FillAsync("2020-01-01");
        await page.Button("Show").ClickAsync();
        await Assertions.Expect(page.Locator("#apart-title")).ToHaveTextAsync("Accuracy by ball");
        Assert.Contains("from=2020-01-01", page.Url, StringComparison.Ordinal);

        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "PDF", Exact = true }).ClickAsync());

        Assert.Equal("report-Mira.pdf", download.SuggestedFilename);
        Assert.Empty(user.Complaints);
    }

    [Fact]
    public async Task RecordPage_ShotsComeAndGo_ShowsTheirFigures()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        await console.ShotAsync(1, "a", (15, 11));
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var lane = await user.OpenAsync("/lane/1");
        await lane.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Figures so far" }).ClickAsync();
        var table = lane.Locator("table.accuracy");
        await Assertions.Expect(table).ToContainTextAsync("1 of 1: 100 %");
        await Assertions.Expect(table).ToContainTextAsync("1 board left (inside)");
        await Assertions.Expect(lane.Locator("#accuracy-title")).ToHaveTextAsync("Accuracy so far");
        await lane.Locator("html[data-link=up]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });

        await console.ShotAsync(1, "b", (15, 15));
        await Assertions.Expect(table).ToContainTextAsync("1 of 2: 50 %");
        await Assertions.Expect(lane.Locator("ol.shots")).ToContainTextAsync("5 boards left at the arrows: not split");
        await console.ActAsync(1, """{"kind":"void","number":2,"reason":"misread"}""");
        await Assertions.Expect(table).ToContainTextAsync("1 of 1: 100 %");
        Assert.Empty(user.Complaints);
    }

    [Fact]
    public async Task RecordPage_ShotWhileThePageLoads_IsShown()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        await console.ShotAsync(1, "a", (15, 11));
        using var listed = JsonDocument.Parse(await console.GetAsync("/api/sessions"));
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var came = 0;
        // The page is there with one shot; the second comes before the page has asked for anything newer.
        await user.Context.RouteAsync("**/records/*", async route =>
        {
            if (route.Request.ResourceType == "fetch" && Interlocked.Exchange(ref came, 1) == 0)
            {
                await console.ShotAsync(1, "b", (15, 15));
            }

            await route.ContinueAsync();
        });

        var page = await user.OpenAsync($"/records/{listed.RootElement[0].GetProperty("sessionId").GetString()}");

        await Assertions.Expect(page.Locator("table.accuracy")).ToContainTextAsync("1 of 2: 50 %");
        Assert.Empty(user.Complaints);
    }

    [Fact]
    public async Task Pages_OfFewShots_SayWhatIsMissing()
    {
        int[] counts = [0, 1, 2, 3, 9];
        await using var console = await ServedConsole.StartAsync(lanes: counts.Length + 1);
        for (var lane = 0; lane < counts.Length; lane++)
        {
            await console.SessionAsync(lane + 1, $"Few {counts[lane]}", "ten-shot-spread", "left");
            for (var shot = 0; shot < counts[lane]; shot++)
            {
                await console.ShotAsync(lane + 1, $"s-{lane}-{shot}", (15, 11 + (0.25 * (shot % 3))));
            }
        }

        await console.SessionAsync(counts.Length + 1, "Unseen", "ten-shot-spread");
        for (var shot = 0; shot < 9; shot++)
        {
            await console.ShotAsync(counts.Length + 1, $"u-{shot}");
        }

        await using var user = await chromium.UserAsync(console, Screen.Phone);
        using var listed = JsonDocument.Parse(await console.GetAsync("/api/sessions"));
        foreach (var session in listed.RootElement.EnumerateArray())
        {
            var (bowler, shots) = (session.GetProperty("bowler").GetString()!, session.GetProperty("shots").GetInt32());
            var page = await user.OpenAsync($"/bowlers/{Uri.EscapeDataString(bowler)}", live: false);
            await PageTests.CheckAsync(page, $"few-{bowler.Replace(' ', '-')}", "phone", bright: false);
            var said = await page.Locator("main").InnerTextAsync();
            Assert.Contains("is not known", said, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", said, StringComparison.Ordinal);
            if (bowler.StartsWith("Few", StringComparison.Ordinal) && shots > 0)
            {
                Assert.Contains("right (inside)", said, StringComparison.Ordinal);
            }

            await page.CloseAsync();
            page = await user.OpenAsync($"/records/{session.GetProperty("sessionId").GetString()}");
            await PageTests.CheckAsync(page, $"few-record-{bowler.Replace(' ', '-')}", "phone", bright: false);
            said = await page.Locator("main").InnerTextAsync();
            Assert.Contains(shots == 0 ? "No shot that counts yet" : bowler == "Unseen" ? "9 not measured" : $"{shots} of {shots}: 100", said, StringComparison.Ordinal);
            await page.CloseAsync();
        }

        Assert.Empty(user.Complaints);
    }

    /// <summary>Fifteen shots at the second arrow, then eighteen at a line, by a fixed saw tooth: the scatter falls from week to week.</summary>
    private static string Session(int week)
    {
        var text = new StringBuilder("time,laydownBoard,arrowsBoard,boardAt40,speedMph,ball\n");
        for (var shot = 0; shot < 33; shot++)
        {
            var size = 1.7 * Math.Pow(0.9, week);
            var (a, b, c) = (Tooth(shot, week, 7), Tooth(shot, week, 5), Tooth(shot, week, 11));
            var at = new DateTime(2026, 3, 2, 18, shot, 0).AddDays(7 * week).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
            var (laydown, slope) = (19.8 + (0.6 * a), -0.32 + (0.04 * b));
            var (near, speed, ball) = (week == 6 && shot == 4 ? 31 : 10.5 + (size * a), 17 + (0.6 * c), week % 2 == 0 ? "grey" : "blue");
            text.Append(shot < 15
                ? string.Create(CultureInfo.InvariantCulture, $"{at},,{near:0.0},,{speed:0.0},{ball}\n")
                : string.Create(CultureInfo.InvariantCulture, $"{at},{laydown:0.0},{laydown + (15 * slope):0.0},{laydown + (40 * slope) + (0.9 * c):0.0},{speed:0.0},{ball}\n"));
        }

        return text.ToString();

        // From -1.5 to 1.5, another order each week.
        static double Tooth(int shot, int week, int step) => (((shot * step) + (week * 3)) % 13 / 4.0) - 1.5;
    }
}
