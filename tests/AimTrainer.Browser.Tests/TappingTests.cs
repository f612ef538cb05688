using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>From an empty data folder to the end of a ten-shot drill by tapping, while other browsers look on.</summary>
public sealed class TappingTests(Chromium chromium)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("tablet")]
    public async Task Drill_TappedFromAnEmptyFolder_IsDoneAndTheSameInEveryBrowser(string size)
    {
        await using var console = await ServedConsole.StartAsync();
        await using var coach = await chromium.UserAsync(console, Screen.Named(size));
        await using var other = await chromium.UserAsync(console, Screen.Desk);
        await using var bowler = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/");
        var second = await other.OpenAsync("/lane/1");
        var lanes = await other.OpenAsync("/");
        var phone = await bowler.OpenAsync("/bowler/1");
        await Expect(page.GetByText("Your first session")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Start a session on lane 1" }).TapAsync();
        await page.GetByLabel("Bowler", new PageGetByLabelOptions { Exact = true }).FillAsync("Mira");
        await page.Button("Start").TapAsync();
        await Expect(page.GetByText("Nobody walks past the foul line").First).ToBeVisibleAsync();
        await page.GetByLabel("as usual").CheckAsync();
        await page.Button("Begin: show the first target").TapAsync();
        await Expect(phone.Locator("#now")).ToContainTextAsync("Board");

        // The drill's target is the second arrow, board 10, 3 boards wide: 8.5 to 11.5 hold, 6 and 13 do not.
        string[] boards = ["10", "11", "9", "13", "10", "6", "10"];
        for (var i = 0; i < boards.Length; i++)
        {
            await page.LogAsync(i + 1, boards[i]);
            await SameAsync(page, second, i + 1);
            await Expect(lanes.Locator(".dots li")).ToHaveCountAsync(i + 1);

            // This drill tells the bowler nothing before the end.
            await Expect(phone.Locator("#last")).ToHaveTextAsync("Nothing yet; the drill says when.");
        }

        await TapStripAsync(page, 11.5);
        await page.LogShot(8).TapAsync();
        await SameAsync(page, second, 8);
        await TapLaneAsync(page);
        await Expect(page.Locator(".strip output")).ToHaveTextAsync(new Regex("^board "));
        await page.Button("not seen").TapAsync();
        await page.LogShot(9).TapAsync();
        await SameAsync(page, second, 9);
        await page.LogAsync(10, "10");
        await Expect(page.GetByText("The session is over", new PageGetByTextOptions { Exact = true })).ToBeVisibleAsync();
        await Expect(second.Locator("#over")).ToBeVisibleAsync();
        await Expect(phone.Locator("#told li, #last .mark")).ToHaveCountAsync(10);

        using var listed = JsonDocument.Parse(await console.GetAsync("/api/sessions"));
        var session = Assert.Single(listed.RootElement.EnumerateArray());
        Assert.Equal(10, session.GetProperty("shots").GetInt32());
        Assert.True(session.GetProperty("ended").GetBoolean());
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "See the record" }).TapAsync();
        await Expect(page.GetByText("7 of 9").First).ToBeVisibleAsync();
        await Expect(page.GetByText("Arm as usual")).ToBeVisibleAsync();
        Assert.Empty(coach.Complaints.Concat(other.Complaints).Concat(bowler.Complaints));
    }

    [Fact]
    public async Task Strip_WhileAFingerIsOnIt_ShowsTheBoardsLargeAboveIt()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var page = await user.OpenAsync("/lane/1");
        var box = (await page.Strip().BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + 20);
        await page.Mouse.DownAsync();
        var lens = (await page.Locator(".lens").BoundingBoxAsync())!;
        Assert.InRange(lens.X, 0, 360 - lens.Width);
        Assert.InRange(lens.Y + lens.Height, 0, box.Y + 20);
        await page.Mouse.MoveAsync(box.X + 40, box.Y + 20);
        var picked = await page.Locator(".strip output").TextContentAsync();
        await Expect(page.Locator(".lens")).ToContainTextAsync(picked!.Replace("board ", "", StringComparison.Ordinal));
        await page.Mouse.UpAsync();
        await Expect(page.Locator(".lens")).ToBeHiddenAsync();
        await Expect(page.Locator(".strip output")).ToHaveTextAsync(picked);
    }

    private static async Task SameAsync(IPage one, IPage other, int shots)
    {
        await one.ShotsAsync(shots);
        await other.ShotsAsync(shots);
        Assert.Equal(await one.SaidAsync(), await other.SaidAsync());
    }

    /// <summary>Taps the strip where it shows a board; it shows 0.5 to 20, board 20 at its left for a right-hander.</summary>
    private static async Task TapStripAsync(IPage page, double board)
    {
        var box = (await page.Strip().BoundingBoxAsync())!;
        var low = double.Parse((await page.Strip().GetAttributeAsync("aria-valuemin"))!, System.Globalization.CultureInfo.InvariantCulture);
        var high = double.Parse((await page.Strip().GetAttributeAsync("aria-valuemax"))!, System.Globalization.CultureInfo.InvariantCulture);
        const double margin = 12;
        var x = margin + ((high - board) / (high - low) * (box.Width - (2 * margin)));
        await page.Strip().TapAsync(new LocatorTapOptions { Position = new Position { X = (float)x, Y = 30 } });
        await Expect(page.Locator(".strip output")).ToHaveTextAsync(FormattableString.Invariant($"board {board}"));
    }

    private static Task TapLaneAsync(IPage page) => page.Locator("svg.lane").TapAsync(new LocatorTapOptions { Position = new Position { X = 150, Y = 100 } });
}
