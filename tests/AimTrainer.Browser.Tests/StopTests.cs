using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>The emergency stop as a coach meets it: on every page, one tap, told everywhere, two taps to show again; and displays elsewhere.</summary>
public sealed class StopTests(Chromium chromium)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("tablet")]
    public async Task Stop_OnOnePage_IsToldOnAllAndOutlivesTheHost(string size)
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Named(size));
        await using var other = await chromium.UserAsync(console, Screen.Named(size));
        var page = await user.OpenAsync("/settings", live: false);
        var elsewhere = await other.OpenAsync("/bowlers");
        await Expect(page.Locator("#stopped")).ToBeHiddenAsync();

        await page.Locator("#stop").ClickAsync();
        await Expect(page.Locator("#stopped")).ToBeVisibleAsync();
        await Expect(elsewhere.Locator("#stopped")).ToBeVisibleAsync();
        Assert.Contains("\"stopped\":true", await console.GetAsync("/api/projection"), StringComparison.Ordinal);
        await PageTests.CheckAsync(elsewhere, "stopped", size, bright: false);

        await console.KillAsync();
        await console.StartAgainAsync();
        var again = await other.OpenAsync("/lane/1");
        await Expect(again.Locator("#stopped")).ToBeVisibleAsync();

        // One tap too few shows nothing; the answer that stays dark is the one that is marked.
        await again.Locator("#release").ClickAsync();
        await Expect(again.Locator("#release-sure")).ToContainTextAsync("Nobody on a lane");
        await Expect(again.Locator("#release-no")).ToBeFocusedAsync();
        await again.Locator("#release-no").ClickAsync();
        Assert.Contains("\"stopped\":true", await console.GetAsync("/api/projection"), StringComparison.Ordinal);
        await again.Locator("#release").ClickAsync();
        await again.Locator("#release-yes").ClickAsync();
        await Expect(again.Locator("#stopped")).ToBeHiddenAsync();
        await Expect(page.Locator("#stopped")).ToBeHiddenAsync();
        Assert.Empty(user.Complaints);
    }

    [Fact]
    public async Task Stop_ByTheKey_FromWithinAField()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Named("tablet"));
        var page = await user.OpenAsync("/displays", live: false);
        await page.Locator("#display-name").FocusAsync();

        await page.Keyboard.PressAsync("F9");

        await Expect(page.Locator("#stopped")).ToBeVisibleAsync();
        Assert.Contains("\"stopped\":true", await console.GetAsync("/api/projection"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("tablet")]
    public async Task Displays_TokenMadeAndRevoked(string size)
    {
        await using var console = await ServedConsole.StartAsync(lanes: 8);
        await using var user = await chromium.UserAsync(console, Screen.Named(size), size == "tablet");
        var page = await user.OpenAsync("/displays", live: false);
        await page.Locator("#display-name").FillAsync("Pair 7 and 8");
        await page.Locator("#display-station").SelectOptionAsync("7");
        await page.GetByText("Projector on the lane").ClickAsync();
        await page.GetByText("Make a token").ClickAsync();

        await Expect(page.Locator("#display-made")).ToContainTextAsync("display-");
        await Expect(page.Locator("#display-made")).ToContainTextAsync($"aimtrainer display projector --server {console.Address} --station 7");
        await Expect(page.Locator("#displays")).ToContainTextAsync("Pair 7 and 8, lane 7, projector");
        await PageTests.CheckAsync(page, "displays", size, size == "tablet");
        await page.GetByText("Revoke").ClickAsync();
        await Expect(page.Locator("#no-displays")).ToBeVisibleAsync();
        Assert.Empty(user.Complaints);
    }
}
