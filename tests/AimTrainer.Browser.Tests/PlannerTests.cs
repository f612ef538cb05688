using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A line is planned, aimed, fitted and trained, with taps and with the keyboard.</summary>
public sealed class PlannerTests(Chromium chromium)
{
    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task Planner_SlidersNotationMovesAndTraining_LeadToTheStartPage(string size, bool bright)
    {
        await using var console = await ServedConsole.StartAsync(lanes: 2);
        await console.SessionAsync(1, "Mira", "fitted-target");
        await console.ShotAsync(1, "seen-1", (15, 14.5), (40, 8));
        await console.ShotAsync(1, "seen-2", (15, 14), (40, 7));
        await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
        var page = await user.OpenAsync("/lines", live: false);
        await PlannedAsync(page);

        // The keyboard moves a slider; number field and picture follow.
        var before = await PictureAsync(page);
        await page.GetByLabel("Laydown, slider", new PageGetByLabelOptions { Exact = true }).PressAsync("ArrowRight");
        await Expect(page.GetByLabel("Laydown", new PageGetByLabelOptions { Exact = true })).ToHaveValueAsync("23.1");
        await Expect(page.Locator("#plan-lane")).Not.ToHaveAttributeAsync("aria-label", before);

        // What is no value is refused in words, and the drawing stays.
        await page.GetByLabel("Revs", new PageGetByLabelOptions { Exact = true }).FillAsync("4000");
        await Expect(page.Locator("#wrong")).ToContainTextAsync("Revs: found 4000; allowed: 0 to 1000");
        await page.GetByLabel("Revs", new PageGetByLabelOptions { Exact = true }).FillAsync("330");
        await Expect(page.Locator("#wrong")).ToBeHiddenAsync();

        // Notation both ways, a move, and a notation that is none.
        var line = page.GetByLabel("Board at feet, twice");
        await line.FillAsync("20@15 10@42");
        await page.Button("Use this line").ClickAsync();
        await Expect(page.GetByLabel("Laydown", new PageGetByLabelOptions { Exact = true })).ToHaveValueAsync("25.56");
        await Expect(line).ToHaveValueAsync("20@15 10@42");
        await page.Button("2-and-1 in").ClickAsync();
        await Expect(line).ToHaveValueAsync(new Regex("^21@15 "));
        await page.Button("2-and-1 out").ClickAsync();
        await Expect(line).ToHaveValueAsync("20@15 10@42");
        await line.FillAsync("20 to 10");
        await page.Button("Use this line").ClickAsync();
        await Expect(page.Locator("#wrong")).ToContainTextAsync("allowed: a board from 0.5 to 39.5 and feet from 0 to 60");
        await line.FillAsync("20@15 10@42");
        await page.Button("Use this line").ClickAsync();
        await Expect(page.Locator("#wrong")).ToBeHiddenAsync();

        // A left-hander's picture is the mirror: the same words.
        await PlannedAsync(page);
        var right = await PictureAsync(page);
        await page.GetByText("left", new PageGetByTextOptions { Exact = true }).ClickAsync();
        await PlannedAsync(page);
        Assert.Equal(right, await PictureAsync(page));
        await page.GetByText("right", new PageGetByTextOptions { Exact = true }).ClickAsync();

        await page.GetByLabel("Session").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await Expect(page.Locator("#seen")).ToContainTextAsync("2 shots seen on the boards");
        await Expect(page.Locator("#legend")).ToContainTextAsync("measured crossing");
        await PageTests.CheckAsync(page, "lines-planned", size, bright);

        await page.Button("Train this line").ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/lane/2/start\\?drill=two-point-line-"));
        await Expect(page.GetByLabel("Drill")).ToHaveValueAsync(new Regex("^two-point-line-.*-at-42$"));
        Assert.DoesNotContain(user.Complaints, Unwanted);
    }

    [Fact]
    public async Task Line_TypedWhileAnAnswerIsOnItsWay_IsNotWrittenOver()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var page = await user.OpenAsync("/lines", live: false);
        await PlannedAsync(page);
        var held = new TaskCompletionSource();
        var use = new TaskCompletionSource();
        await page.RouteAsync("**/api/plan/line", async route =>
        {
            var typed = route.Request.PostData!.Contains("\"line\"", StringComparison.Ordinal);
            await (typed ? use.Task : held.Task);
            await route.ContinueAsync();
        });

        // The answer to the revs comes after the line was typed and before what was typed is answered.
        await page.GetByLabel("Revs", new PageGetByLabelOptions { Exact = true }).FillAsync("330");
        var line = page.GetByLabel("Board at feet, twice");
        await line.FillAsync("20@15 10@42");
        await page.Button("Use this line").ClickAsync();
        held.SetResult();
        await PlannedAsync(page);
        await Expect(line).ToHaveValueAsync("20@15 10@42");
        use.SetResult();

        await Expect(page.GetByLabel("Laydown", new PageGetByLabelOptions { Exact = true })).ToHaveValueAsync("25.56");
        await PlannedAsync(page);
        await Expect(page.GetByLabel("Board at feet, twice")).ToHaveValueAsync("20@15 10@42");

        // A change elsewhere is what the field tells next.
        await line.FillAsync("1@15 2@42");
        await page.GetByLabel("Laydown, slider", new PageGetByLabelOptions { Exact = true }).PressAsync("ArrowRight");
        await Expect(line).Not.ToHaveValueAsync("1@15 2@42");
        Assert.Empty(user.Complaints);
    }

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task AimMap_WorkedOut_ReadsWithoutColourAndTrains(string size, bool bright)
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
        var page = await user.OpenAsync("/lines/aim", live: false);
        await page.GetByText("Pocket window:").ClickAsync();
        await page.GetByLabel("From angle, slider").First.FillAsync("2");
        await page.GetByText("Lines that are tried:").ClickAsync();
        await page.GetByLabel("Laydown from", new PageGetByLabelOptions { Exact = true }).FillAsync("18");
        await page.GetByLabel("Laydown to", new PageGetByLabelOptions { Exact = true }).FillAsync("28");
        await page.Button("Work it out").ClickAsync();
        await Expect(page.Locator("#best-box")).ToBeVisibleAsync();
        await Expect(page.Locator("#figures")).ToContainTextAsync(new Regex("board \\d"));
        await Expect(page.Locator("#best-said")).ToContainTextAsync("The lane is taken as exact");
        await Expect(page.Locator("#worth li")).ToHaveCountAsync(5);

        // Any line can be read in words, by the keyboard.
        var read = await page.Locator("#read").TextContentAsync();
        await page.Locator("#read-board").PressAsync("ArrowLeft");
        await Expect(page.Locator("#read")).Not.ToHaveTextAsync(read!);
        await Expect(page.Locator("#read")).ToContainTextAsync(new Regex("of 100 reach the window \\(counted, ±\\d+\\)"));
        await page.GetByText("The numbers", new PageGetByTextOptions { Exact = true }).ClickAsync();
        await Expect(page.Locator("#map-table tbody tr").First).ToBeVisibleAsync();
        await PageTests.CheckAsync(page, "lines-aim", size, bright);

        await page.Button("Train this: the laydown").ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/lane/1/start\\?drill=narrow-at-arrow-"));
        Assert.Empty(user.Complaints);
    }

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task TodaysLane_FromMeasuredShots_IsFoundAndUsed(string size, bool bright)
    {
        // Shots of an invented bowler on a lane with more friction than the pattern says: worked out by the host itself, rounded as a sensor would.
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        using var http = new HttpClient { BaseAddress = new Uri(console.Address) };
        for (var i = 0; i < 8; i++)
        {
            await console.PostAsync("/api/stations/1/shots", await ShotAsync(http, i));
        }

        await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
        var page = await user.OpenAsync("/lines/lane", live: false);
        await page.Button("Fit the lane").ClickAsync();
        await Expect(page.Locator("#progress")).ToContainTextAsync("Session: found none");
        await page.GetByLabel("Session").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await Expect(page.Locator("#session-said")).ToContainTextAsync("8 with crossings at three distances or more");
        await page.Button("Fit the lane").ClickAsync();
        await Expect(page.Locator("#fit-words")).ToContainTextAsync("8 shots fitted");
        await Expect(page.Locator("#fit-numbers")).ToContainTextAsync(new Regex("friction of the oil.*0\\.03[89]|friction of the oil.*0\\.04"));
        await PageTests.CheckAsync(page, "lines-lane", size, bright);

        await page.Button("Use this lane for planning").ClickAsync();
        await Expect(page.Locator("#used")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Line planner" }).ClickAsync();
        await PlannedAsync(page);
        await Expect(page.Locator("#trust")).ToContainTextAsync("The lane as fitted to 8 shots of");
        Assert.DoesNotContain(user.Complaints, Unwanted);
    }

    [Fact]
    public async Task Pattern_WithAMistake_ShowsItWhereItIs()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var page = await user.OpenAsync("/lines", live: false);
        await PlannedAsync(page);
        await page.GetByText("Oil pattern:").ClickAsync();
        await page.GetByText("my own", new PageGetByTextOptions { Exact = true }).ClickAsync();
        await page.Button("Start from an example").ClickAsync();
        await Expect(page.Locator("#lane-findings")).ToContainTextAsync("Nothing is wrong with it.");
        await Expect(page.Locator("#pattern-said")).ToHaveTextAsync("my own");
        var text = page.GetByLabel("My pattern, as JSON");
        var good = await text.InputValueAsync();
        await text.FillAsync(good.Replace("\"end_ft\": 34", "\"end_ft\": 340", StringComparison.Ordinal));
        await Expect(page.Locator("#lane-findings")).ToContainTextAsync("$.passes[1].end_ft");
        await Expect(page.Locator("#lane-findings")).ToContainTextAsync("found 340; allowed: a number, 0 to 60");
        await Expect(page.Locator("#lane-lines .wrong")).ToHaveTextAsync("6");
        await PageTests.CheckAsync(page, "lines-pattern", "phone", bright: false);
        await text.FillAsync(good.Replace("\"mu_dry\": 0.2", "\"mu_dry\": 0.24", StringComparison.Ordinal));
        await Expect(page.Locator("#lane-findings")).ToContainTextAsync("Nothing is wrong with it.");
        Assert.Empty(user.Complaints);
    }

    /// <summary>A refusal is an answer of the host like any other; the browser notes its status all the same.</summary>
    private static bool Unwanted(string complaint) => !complaint.Contains("status of 400", StringComparison.Ordinal);

    private static Task PlannedAsync(IPage page) => page.Locator("html[data-planned=yes]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });

    private static async Task<string> PictureAsync(IPage page) => await page.Locator("#plan-lane").GetAttributeAsync("aria-label") ?? "";

    private static async Task<string> ShotAsync(HttpClient http, int number)
    {
        var angle = (1.5 + (0.25 * (number % 4))).ToString(CultureInfo.InvariantCulture);
        using var body = new StringContent(
            $$"""
            {"release":{"hand":"right","launchAngleDeg":{{angle}},"laydownBoard":{{20 + number}},"speedMph":17.5,"revsRpm":{{300 + (15 * number)}},"axisRotationDeg":45,"axisTiltDeg":10},
             "fit":{"oilFriction":0.04,"dryFriction":0.22,"patternFeet":39,"covariance":[[0,0,0],[0,0,0],[0,0,0]]} }
            """, Encoding.UTF8, "application/json");
        using var answer = await http.PostAsync(new Uri("/api/plan/path", UriKind.Relative), body);
        using var path = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        string At(int feet) => path.RootElement.GetProperty("path").EnumerateArray().First(point => point.GetProperty("feet").GetDouble() == feet).GetProperty("board").GetDouble()
            .ToString("0.00", CultureInfo.InvariantCulture);
        return $$"""
            {"id":"fit-{{number}}","laydownBoard":{{At(0)}},"entryBoard":{{At(60)}},"speedMph":17.5,"speedAt":"release","revsRpm":{{300 + (15 * number)}},"axisRotationDeg":45,"axisTiltDeg":10,
             "crossings":[{"feet":15,"board":{{At(15)}}},{"feet":40,"board":{{At(40)}}},{"feet":50,"board":{{At(50)}}}]}
            """;
    }
}
