using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>What a coach does beside logging shots.</summary>
public sealed class CoachTests(Chromium chromium)
{
    [Fact]
    public async Task Keyboard_Alone_StartsASessionAndLogsShots()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var coach = await chromium.UserAsync(console, Screen.Desk);
        var page = await coach.OpenAsync("/");
        await TabToAsync(page, "To the page's content");
        await page.Keyboard.PressAsync("Enter");
        await TabToAsync(page, "Start a session");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/start");
        await TabToAsync(page, "Bowler");
        await page.Keyboard.TypeAsync("Mira");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/lane/1");
        await page.Button("Begin: show the first target").WaitForAsync();
        await TabToAsync(page, "Begin: show the first target");
        await page.Keyboard.PressAsync("Enter");
        await page.Strip().WaitForAsync();
        await TabToAsync(page, "Board where the ball crossed, second arrow");

        // Each key moves what is picked by half a board, as the lane lies: right is towards board 1 for a right-hander.
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator(".strip output")).ToHaveTextAsync("board 9.5");
        await page.Keyboard.PressAsync("Enter");
        await page.ShotsAsync(1);

        // The strip keeps the keyboard for the next shot.
        await page.Keyboard.PressAsync("ArrowLeft");
        await page.Keyboard.PressAsync("ArrowLeft");
        await Expect(page.Locator(".strip output")).ToHaveTextAsync("board 11");
        await page.Keyboard.PressAsync("Enter");
        await page.ShotsAsync(2);
        await TabToAsync(page, "Void shot 2");
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.TypeAsync("slipped");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#shots")).ToContainTextAsync("does not count: slipped");
        Assert.Empty(coach.Complaints);
    }

    [Fact]
    public async Task Actions_OfTheCoach_ShowInTheOtherBrowserToo()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await using var coach = await chromium.UserAsync(console, Screen.Tablet);
        await using var other = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        var second = await other.OpenAsync("/lane/1");
        var records = await other.OpenAsync("/records");
        await page.LogAsync(1, "13");
        await Expect(records.GetByRole(AriaRole.Cell).Filter(new LocatorFilterOptions { HasTextString = "Fitted target" })).ToHaveCountAsync(1);
        await page.Button("Correct shot 1").TapAsync();
        await page.GetByLabel("Board, second arrow").FillAsync("x");
        await page.Button("Correct it").TapAsync();
        await Expect(page.Locator("#ask-wrong")).ToHaveTextAsync("A board is a number such as 12.5.");
        await page.GetByLabel("Board, second arrow").FillAsync("10");
        await page.Button("Correct it").TapAsync();
        await Expect(second.Locator("#shots")).ToContainTextAsync("on the centre");
        await page.Button("Change the target…").TapAsync();
        await page.GetByLabel("Centre board").FillAsync("12");
        await page.Button("Change it").TapAsync();
        await Expect(second.Locator("#now")).ToContainTextAsync("12");
        await page.Button("Take back").TapAsync();
        await Expect(second.Locator("#shots")).ToContainTextAsync("taken back");
        await page.Button("Pause").TapAsync();
        await Expect(second.Locator("#paused")).ToBeVisibleAsync();
        await page.Button("Go on").TapAsync();
        await Expect(second.Locator("#paused")).ToBeHiddenAsync();
        await page.Button("Pass over…").TapAsync();
        await page.GetByLabel("What").SelectOptionAsync("block");
        await page.Button("Pass over it").TapAsync();
        await Expect(second.Locator("#over")).ToBeVisibleAsync();
        Assert.Empty(coach.Complaints.Concat(other.Complaints));
    }

    [Fact]
    public async Task Log_WithNothingPicked_AsksInsteadOfSending()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Sam", "two-point-line", "left");
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1");
        await page.LogShot(1).TapAsync();
        await Expect(page.Locator("#hint")).ToBeVisibleAsync();
        await page.ShotsAsync(0);

        // For a left-hander board 1 is at the left; a line is picked target by target on one pad.
        var fourteen = (await page.Board("14").BoundingBoxAsync())!;
        var fifteen = (await page.Board("15").BoundingBoxAsync())!;
        Assert.True(fourteen.X < fifteen.X || fourteen.Y < fifteen.Y);
        await page.Board("14").TapAsync();
        await Expect(page.Button("Log shot 1 (seven at 40 feet not seen)")).ToBeVisibleAsync();
        await page.Board("8").TapAsync();
        await page.LogShot(1).TapAsync();
        await Expect(page.Locator("#shots")).ToContainTextAsync("third arrow: 1 board left (outside)");
        await Expect(page.Locator("#shots")).ToContainTextAsync("seven at 40 feet: 1 board right (inside)");
    }

    [Fact]
    public async Task Unit_ChosenOnOnePage_HoldsOnAllOfTheBrowser()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await console.ShotAsync(1, "one", (15, 12));
        await using var coach = await chromium.UserAsync(console, Screen.Tablet);
        var lane = await coach.OpenAsync("/lane/1");
        var records = await coach.OpenAsync("/records");
        await Expect(lane.Locator("#shots")).ToContainTextAsync("2 boards left (inside)");
        var settings = await coach.OpenAsync("/settings", live: false);
        await settings.GetByLabel("centimetres").CheckAsync();

        // Two boards of a lane 41.5 inches wide: 2 * 41.5 / 39 * 2.54 = 5.406 cm. Source: the design, section 2.
        await Expect(lane.Locator("#shots")).ToContainTextAsync("5.4 cm left (inside)");
        await records.GetByRole(AriaRole.Row).GetByRole(AriaRole.Link).ClickAsync();
        await Expect(records.Locator(".shots")).ToContainTextAsync("5.4 cm left (inside)");
    }

    [Fact]
    public async Task Page_WithScriptsOff_SaysWhatIsMissing()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await console.ShotAsync(1, "one", (15, 12));
        await using var user = await chromium.UserAsync(console, Screen.Phone, scripts: false);
        var page = await user.OpenAsync("/records", live: false);
        await Expect(page.GetByText("Scripts are off in this browser")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Row).GetByRole(AriaRole.Link).ClickAsync();
        await Expect(page.GetByText("2 boards left (inside)")).ToHaveCountAsync(3);
        await Expect(page.GetByText(" UTC")).ToHaveCountAsync(1);
    }

    /// <summary>Presses Tab until something of this name has the keyboard, and sees at each stop that it shows.</summary>
    private static async Task TabToAsync(IPage page, string name)
    {
        for (var stops = 0; stops < 80; stops++)
        {
            await page.Keyboard.PressAsync("Tab");
            var (found, shows) = await StopAsync(page);
            Assert.True(shows, $"nothing shows that \"{found}\" has the keyboard");
            if (found == name)
            {
                return;
            }
        }

        Assert.Fail($"the Tab key does not come to \"{name}\"");
    }

    private static async Task<(string Name, bool Shows)> StopAsync(IPage page)
    {
        var stop = await page.EvaluateAsync<string[]>("""
            () => {
              const at = document.activeElement, name = (at.getAttribute('aria-label') ?? at.labels?.[0]?.textContent ?? at.textContent).trim();
              const framed = each => each && getComputedStyle(each).outlineStyle !== 'none' && parseFloat(getComputedStyle(each).outlineWidth) >= 2;
              const shown = [at, at.closest('label'), at.closest('.editor')].some(framed);
              const called = at.textContent.trim() === name || !at.textContent.trim() ? name : name.startsWith('Start a session') ? 'Start a session' : name;
              return [called, shown || at === document.body ? 'yes' : 'no'];
            }
            """);
        return (stop[0], stop[1] == "yes");
    }
}
