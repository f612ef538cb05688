using System.Text.Json;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A phone that sleeps, a network that drops, a host that dies: what was tapped meanwhile arrives, and once.</summary>
public sealed class LostLinkTests(Chromium chromium)
{
    [Fact]
    public async Task Taps_WhileTheServerIsKilledAndStartedAgain_ArriveOnce()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        var second = await coach.OpenAsync("/lane/1"); // The same browser: both pages see what waits, and both try to send it.
        await page.LogAsync(1, "10");
        await console.KillAsync();
        await Expect(page.Locator("#link")).ToBeVisibleAsync();
        await Expect(page.Locator("#link")).ToContainTextAsync("The host does not answer");
        foreach (var board in (string[])["9", "11", "12"])
        {
            await page.Board(board).TapAsync();
            await page.LogShot(2).TapAsync();
        }

        await Expect(page.Locator("#unsent")).ToContainTextAsync("3 tapped shots wait to be sent");
        await Expect(second.Locator("#unsent")).ToContainTextAsync("3 tapped shots wait to be sent");
        await console.StartAgainAsync();
        await page.ShotsAsync(4);
        await second.ShotsAsync(4);
        await Expect(page.Locator("#link")).ToBeHiddenAsync();
        await Expect(page.Locator("#unsent")).ToHaveCountAsync(0);
        Assert.Equal([12, 11, 9, 10], await BoardsAsync(console));
        Assert.Empty(coach.Complaints);
    }

    [Fact]
    public async Task Taps_OfAPageThatWasClosedBeforeTheyWereSent_ArriveOnceWhenItIsOpenedAgain()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        await coach.Context.SetOfflineAsync(true);
        await page.Board("9").TapAsync();
        await page.LogShot(1).TapAsync();
        await Expect(page.Locator("#unsent")).ToContainTextAsync("1 tapped shot waits to be sent");
        await page.CloseAsync();
        await coach.Context.SetOfflineAsync(false);
        Assert.Empty(await BoardsAsync(console));
        page = await coach.OpenAsync("/lane/1");
        await page.ShotsAsync(1);
        await Expect(page.Locator("#unsent")).ToHaveCountAsync(0);
        Assert.Equal([9], await BoardsAsync(console));
    }

    [Fact]
    public async Task Tap_WhoseAnswerIsLost_CountsOnce()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        var lost = 0;
        await page.RouteAsync("**/shots?*", async route =>
        {
            if (lost++ == 0)
            {
                await route.FetchAsync(); // The host takes the shot; its answer never reaches the page.
                await route.AbortAsync();
            }
            else
            {
                await route.ContinueAsync();
            }
        });
        await page.Board("9").TapAsync();
        await page.LogShot(1).TapAsync();
        await Expect(page.Locator("#shots > li")).ToHaveCountAsync(1);
        await Expect(page.Locator("#unsent")).ToHaveCountAsync(0);
        Assert.Equal(2, lost);
        Assert.Equal([9], await BoardsAsync(console));
    }

    [Fact]
    public async Task Tap_OfASessionThatIsOverByThen_IsSaidNotTaken()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        await coach.Context.SetOfflineAsync(true);
        await page.Board("9").TapAsync();
        await page.LogShot(1).TapAsync();
        await console.ActAsync(1, """{"kind":"end"}""");
        await console.SessionAsync(1, "Jo", "fitted-target");
        await coach.Context.SetOfflineAsync(false);
        await Expect(page.GetByText("A tapped shot was not taken")).ToContainTextAsync("board 9 at 15 ft");
        await page.Button("Understood").TapAsync();
        await Expect(page.GetByText("A tapped shot was not taken")).ToHaveCountAsync(0);
        Assert.Empty(await BoardsAsync(console));
    }

    [Fact]
    public async Task Tap_AtATargetThatIsNoLongerOnTheLane_WaitsForTheCoachsDecision()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "ten-shot-spread");
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        await page.LogAsync(1, "10");
        await coach.Context.SetOfflineAsync(true);
        foreach (var board in (string[])["9", "11"])
        {
            await page.Board(board).TapAsync();
            await page.LogShot(2).TapAsync();
        }

        // Meanwhile another coach moves the target: both were thrown at the one that this phone still shows.
        await console.ActAsync(1, """{"kind":"target","target":"second arrow","centreBoard":12}""");
        await coach.Context.SetOfflineAsync(false);
        await Expect(page.Locator(".other-aim")).ToHaveCountAsync(2);
        await Expect(page.Locator(".other-aim").First).ToContainTextAsync(
            "A shot (board 9 at 15 ft) was tapped for board 10 at 15 ft, 3 boards wide. That target is no longer the one on the lane");
        Assert.Equal([10], await BoardsAsync(console));

        // Nothing is decided by going away and coming back.
        await page.ReloadAsync();
        await Expect(page.Locator(".other-aim")).ToHaveCountAsync(2);
        await page.Locator(".other-aim").First.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Leave it out" }).TapAsync();
        await Expect(page.Locator(".other-aim")).ToHaveCountAsync(1);
        await page.Button("Count it for the target that is due now").TapAsync();
        await page.ShotsAsync(2);
        await Expect(page.Locator("#shots")).ToContainTextAsync("1 board right (outside)");
        await Expect(page.Locator(".other-aim")).ToHaveCountAsync(0);
        Assert.Equal([11, 10], await BoardsAsync(console));
    }

    private static async Task<IEnumerable<double>> BoardsAsync(ServedConsole console)
    {
        using var state = JsonDocument.Parse(await console.GetAsync("/api/stations/1"));
        return [.. state.RootElement.GetProperty("lastShots").EnumerateArray()
            .Select(shot => shot.GetProperty("targets")[0].GetProperty("crossing").GetProperty("board").GetDouble())];
    }
}
