using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A projector is set up by tapping on a phone, against a real window of <c>aimtrainer calibrate</c> in a process of its own.</summary>
public sealed class ProjectorTests(Chromium chromium)
{
    private const double LaneInches = 41.5, DeckInches = 720;
    private const string Words = "correct horse battery staple";

    /// <summary>Where the corners of the lane are tapped to: foul line right and left, pin deck left and right. Source of the lane: the design, section 2.</summary>
    private static readonly (double Across, double Down, double X, double Y)[] Corners =
    [
        (0, 0, 700.5, 420), (LaneInches, 0, 580, 420), (LaneInches, DeckInches, 616, 324), (0, DeckInches, 664, 323.5),
    ];

    [Fact]
    public async Task Calibration_ByTapping_SavesTheMapThatFourCornersSettle()
    {
        using var screen = await XScreen.StartAsync(1280, 720);
        await using var console = await ServedConsole.StartAsync(lanes: 2);
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/projector");
        await Expect(page.GetByText("Nobody walks past the foul line")).ToBeVisibleAsync();
        await Expect(page.Locator("#work")).ToBeHiddenAsync();
        await page.Button("Understood: go on").TapAsync();
        await Expect(page.Locator("#none")).ToContainTextAsync($"aimtrainer calibrate --monitor 2 --station 1 --host {console.Address}");
        using var calibrating = console.RunOn(screen.Name, "calibrate", "--monitor", "1", "--station", "2", "--host", console.Address);
        await Expect(page.Locator("#work")).ToBeVisibleAsync();
        await Expect(page.GetByText("Stay behind the foul line")).ToBeVisibleAsync();
        await Expect(page.Locator("#mark-title")).ToHaveTextAsync("Lane 2, projector lane");

        // A mark set in the wrong place is taken back, by removing it and by Undo.
        await page.Button("Place").TapAsync();
        await MarkAsync(page, 2);
        await page.Button("The mark before").TapAsync();
        await MarkAsync(page, 1);
        await page.Button("Remove").TapAsync();
        await Expect(page.Locator("#said")).ToHaveTextAsync("Foul line, right edge of the lane is dropped");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Undo dropping") }).TapAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Undo setting") }).TapAsync();
        await Expect(page.Locator("#mark option").First).ToContainTextAsync("open");
        await PlaceCornersAsync(page);

        // Four marks always fit: what that says is said. A fifth that was looked at tells more.
        await Expect(page.Locator("#figures")).ToContainTextAsync("four marks always fit: this says nothing");
        await Expect(page.Locator("#figures")).ToContainTextAsync("unknown");
        await Expect(page.Locator("#distances")).ToContainTextAsync("A target of one board cannot be shown as it is graded at");
        await MarkAsync(page, 5);
        await NudgeByKeysAsync(page);
        await page.Button("Place").TapAsync();
        await MarkAsync(page, 6);
        await Expect(page.Locator("#figures")).ToContainTextAsync("0.00 px");
        await Expect(page.Locator("#each tr")).ToHaveCountAsync(5);

        // The check picture over the lane and away again; then the map is saved, and put to use at once.
        await page.Button("Check picture").TapAsync();
        await Expect(page.Button("Back to the marks")).ToHaveAttributeAsync("aria-pressed", "true");
        await page.Button("Back to the marks").TapAsync();
        await Expect(page.Button("Check picture")).ToHaveAttributeAsync("aria-pressed", "false");
        await page.Button("Save the map").TapAsync();
        await Expect(page.Locator("#ends")).ToContainTextAsync("Saved as station-2.lane.0001.json");
        await page.Button("Close the window").TapAsync();
        await Expect(page.Locator("#closed")).ToHaveTextAsync("The calibration of lane 2, projector lane, was closed. Its map is saved as station-2.lane.0001.json.");
        await EndAsync(calibrating, 0);

        using var saved = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(console.Folder, "maps", "station-2.lane.0001.json"), TestContext.Current.CancellationToken));
        var found = saved.RootElement.GetProperty("matrix").EnumerateArray().SelectMany(row => row.EnumerateArray().Select(one => one.GetDouble())).ToArray();
        var expected = FourPoints(Corners);
        Assert.All(Enumerable.Range(0, 9), i => Assert.Equal(expected[i], found[i], 1e-6 * Math.Max(1, Math.Abs(expected[i]))));
        var monitor = saved.RootElement.GetProperty("monitor");
        Assert.Equal((1280, 720), (monitor.GetProperty("width").GetInt32(), monitor.GetProperty("height").GetInt32()));
        Assert.Equal(5, saved.RootElement.GetProperty("marks").GetArrayLength());

        // Who placed marks and saved is in the audit; where the crosshair went meanwhile is not.
        var audit = await File.ReadAllTextAsync(Path.Combine(console.Folder, "audit.jsonl"), TestContext.Current.CancellationToken);
        Assert.Equal(6, Regex.Count(audit, "\"detail\":\"set, projector lane of station 2\""));
        Assert.Contains("\"detail\":\"accept, projector lane of station 2\"", audit, StringComparison.Ordinal);
        Assert.DoesNotContain("nudge", audit, StringComparison.Ordinal);
        Assert.Empty(coach.Complaints);
    }

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task Page_OnTheNetwork_WantsACodeShowsTheStateAndFits(string size, bool bright)
    {
        using var screen = await XScreen.StartAsync(1280, 720);
        await using var console = await ServedConsole.OnNetworkAsync(Words);
        await using var coach = await chromium.UserAsync(console, Screen.Named(size), bright);
        await using var second = await chromium.UserAsync(console, Screen.Desk);
        var page = await SignInAsync(coach);
        var other = await SignInAsync(second);
        await page.Button("Understood: go on").TapAsync();
        await PageTests.CheckAsync(page, "projector-none", size, bright);
        await page.Button("Make a code").TapAsync();
        await page.Locator("#code .digits").WaitForAsync();
        var code = (await page.Locator("#code .digits").TextContentAsync())!.Replace(" ", "", StringComparison.Ordinal);
        using var calibrating = console.RunOn(screen.Name, "calibrate", "--monitor", "1", "--name", "near", "--host", console.Address);
        await calibrating.StandardInput.WriteLineAsync(code);
        await Expect(page.Locator("#work")).ToBeVisibleAsync();
        await SendCornersAsync(page);

        await MarkAsync(page, 5);
        await page.Button("Right").TapAsync();
        await page.Button("Place").TapAsync();
        await MarkAsync(page, 6);

        // The other coach's page follows, and both show the same.
        await other.Button("Understood: go on").ClickAsync();
        await Expect(other.Locator("#mark")).ToHaveValueAsync("6");
        Assert.Equal(await page.Locator("#figures").TextContentAsync(), await other.Locator("#figures").TextContentAsync());
        await PageTests.CheckAsync(page, "projector-marks", size, bright);

        // The window's own keys are not the page's only company: giving up on one page shows on the other, and can be taken back there.
        await page.Button("Give up").TapAsync();
        await Expect(other.Locator("#ends")).ToContainTextAsync("Given up. Undo goes back to the marks.");
        await other.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new Regex("^Undo giving up") }).ClickAsync();
        await Expect(page.Button("Give up")).ToBeVisibleAsync();

        // Ended from outside, both pages say so.
        calibrating.Kill();
        await EndAsync(calibrating, null);
        await Expect(page.Locator("#closed")).ToContainTextAsync("No map was saved; the one that was used before stays.");
        Assert.Empty(coach.Complaints.Concat(second.Complaints));
    }

    private static async Task<IPage> SignInAsync(BrowserUser user)
    {
        var page = await user.OpenAsync("/sign-in?next=/projector", live: false);
        await page.GetByLabel("Passphrase").FillAsync(Words);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(url => new Uri(url).AbsolutePath == "/projector");
        return page;
    }

    private static Task MarkAsync(IPage page, int mark) => Expect(page.Locator("#mark")).ToHaveValueAsync($"{mark}");

    /// <summary>From the middle of the picture, where the crosshair is at first.</summary>
    private static async Task PlaceCornersAsync(IPage page)
    {
        var at = (X: 640.0, Y: 360.0);
        for (var i = 0; i < Corners.Length; i++)
        {
            await MarkAsync(page, i + 1);
            await MoveAsync(page, at, (Corners[i].X, Corners[i].Y));
            at = (Corners[i].X, Corners[i].Y);
            await page.Button("Place").TapAsync();
        }
    }

    /// <summary>The same, sent at once.</summary>
    private static Task SendCornersAsync(IPage page) => page.EvaluateAsync(
        """
        async corners => {
          const { send } = await import('/assets/live.js');
          const act = action => send('POST', '/api/projectors/1/near/actions', action);
          let at = [640, 360];
          for (const to of corners) {
            for (const [part, more, less] of [[0, 'right', 'left'], [1, 'down', 'up']]) {
              while (at[part] !== to[part]) {
                const far = Math.abs(to[part] - at[part]) >= 12, sign = Math.sign(to[part] - at[part]);
                await act({ kind: 'nudge', direction: sign > 0 ? more : less, step: far ? 'coarse' : 'fine' });
                at[part] += sign * (far ? 12 : 0.5);
              }
            }
            await act({ kind: 'set' });
          }
        }
        """,
        Corners.Select(corner => new[] { corner.X, corner.Y }));

    /// <summary>Taps the crosshair from one place to another: far as long as it goes, then fine.</summary>
    private static async Task MoveAsync(IPage page, (double X, double Y) from, (double X, double Y) to)
    {
        foreach (var (step, pixels) in ((string, double)[])[("far", 12), ("fine", 0.5)])
        {
            await page.GetByLabel(step, new PageGetByLabelOptions { Exact = true }).CheckAsync();
            foreach (var (way, back, part) in ((string, string, bool)[])[("Right", "Left", true), ("Down, toward you", "Up, away from you", false)])
            {
                var left = part ? to.X - from.X : to.Y - from.Y;
                var taps = (int)(Math.Abs(left) / pixels);
                for (var i = 0; i < taps; i++)
                {
                    await page.Button(left > 0 ? way : back).TapAsync();
                }

                from = part ? (from.X + (Math.Sign(left) * taps * pixels), from.Y) : (from.X, from.Y + (Math.Sign(left) * taps * pixels));
            }
        }

        Assert.Equal(to, from);
    }

    /// <summary>With the keyboard: a far step to the right by Shift, and back.</summary>
    private static async Task NudgeByKeysAsync(IPage page)
    {
        await page.Button("Place").FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await page.Keyboard.PressAsync("Shift+ArrowLeft");
    }

    private static async Task EndAsync(Process process, int? code)
    {
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        if (code is not null)
        {
            Assert.True(code == process.ExitCode, await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        }
    }

    /// <summary>
    /// The projective map that takes four places to four pixels, worked out here by eight linear equations. Source: Hartley and Zisserman,
    /// Multiple View Geometry in Computer Vision, section 4.1 with the last element set to 1 (from memory).
    /// </summary>
    private static double[] FourPoints((double Across, double Down, double X, double Y)[] corners)
    {
        var rows = new double[8][];
        for (var i = 0; i < 4; i++)
        {
            var (u, v, x, y) = corners[i];
            rows[2 * i] = [u, v, 1, 0, 0, 0, -x * u, -x * v, x];
            rows[(2 * i) + 1] = [0, 0, 0, u, v, 1, -y * u, -y * v, y];
        }

        for (var column = 0; column < 8; column++)
        {
            var pivot = Enumerable.Range(column, 8 - column).MaxBy(row => Math.Abs(rows[row][column]));
            (rows[column], rows[pivot]) = (rows[pivot], rows[column]);
            foreach (var row in Enumerable.Range(0, 8).Where(row => row != column))
            {
                var factor = rows[row][column] / rows[column][column];
                for (var k = column; k < 9; k++)
                {
                    rows[row][k] -= factor * rows[column][k];
                }
            }
        }

        return [.. rows.Select((row, i) => row[8] / row[i]), 1];
    }
}
