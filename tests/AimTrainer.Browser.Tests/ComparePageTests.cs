using System.Globalization;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>Balls compared in the console: an invented bowler with two invented balls.</summary>
public sealed class ComparePageTests(Chromium chromium)
{
    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task ComparePage_InBothRooms_IsAccessibleAndFits(string size, bool bright)
    {
        await using var console = await ServedConsole.StartAsync(lanes: 2);
        await console.SessionAsync(1, "Mira", "fitted-target");
        await ThrowAsync(console, 1, 1, 20);
        await console.SessionAsync(1, "Mira", "narrow-downlane");
        await ThrowAsync(console, 1, 21, 33);
        await console.SessionAsync(2, "Lee", "fitted-target", "left");
        await ThrowAsync(console, 2, 1, 3);
        await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
        (string Name, string Path)[] pages = [("compare-whose", "/compare"), ("compare", "/compare?bowler=Mira"), ("compare-few", "/compare?bowler=Lee"), ("compare-nobody", "/compare?bowler=Nobody")];
        foreach (var (name, path) in pages)
        {
            var page = await user.OpenAsync(path, name is "compare" or "compare-few");
            await PageTests.CheckAsync(page, name, size, bright);
            await page.CloseAsync();
        }

        Assert.Empty(user.Complaints);
    }

    [Fact]
    public async Task ComparePage_ByTapping_ChoosesBallsFollowsTheSessionAndExports()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Mira", "fitted-target");
        await ThrowAsync(console, 1, 1, 8);
        await using var user = await chromium.UserAsync(console, Screen.Tablet);
        var page = await user.OpenAsync("/compare", live: false);
        await page.GetByRole(AriaRole.Link, new() { Name = "Mira", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "blue", Exact = true }).CheckAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "red", Exact = true }).CheckAsync();
        await page.GetByLabel("Held against").SelectOptionAsync("red");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare" }).ClickAsync();
        await page.Locator("html[data-link=up]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        await Expect(page.GetByText("1 more good throw of blue and 1 more good throw of red until anything can be said.")).ToBeVisibleAsync();
        await Expect(page.GetByText("8 throws, 8 in the comparison")).ToBeVisibleAsync();

        // The page follows the session: nobody loads it again.
        await ThrowAsync(console, 1, 9, 20);
        await Expect(page.GetByText("20 throws, 20 in the comparison")).ToBeVisibleAsync();
        await Expect(page.Locator("section", new() { HasText = "The answer" }).First).ToContainTextAsync("further inside at the pins");
        await Expect(page.Locator("svg.balls[role=img]").First).ToHaveAttributeAsync("aria-label", new System.Text.RegularExpressions.Regex("^Paths: red: board "));

        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "PDF" }).ClickAsync());
        Assert.Equal("balls.pdf", download.SuggestedFilename);
        Assert.StartsWith("%PDF", await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty(user.Complaints);
    }

    /// <summary>Throws in turn: blue ends two boards further inside and turns a foot later; the 14th is misread.</summary>
    private static async Task ThrowAsync(ServedConsole console, int lane, int from, int to)
    {
        for (var number = from; number <= to; number++)
        {
            var blue = number % 2 == 0;
            double Off(int what) => (((((number * 7) + what) * 37) % 101) / 101.0) - 0.5;
            var (laydown, turn) = (16 + Off(1), 40 + (blue ? 1 : 0) + (0.8 * Off(2)));
            var outmost = laydown - 8 + (0.4 * Off(3));
            double At(double feet) => outmost + ((feet < turn ? 8 / (turn * turn) : (blue ? 12.0 : 9) / 400) * (feet - turn) * (feet - turn)) + (0.1 * Off((int)feet));
            var crossings = string.Join(',', new double[] { 15, 30, 45, 52 }.Select(feet => string.Create(CultureInfo.InvariantCulture, $$"""{"feet":{{feet}},"board":{{At(feet):0.00}}}""")));
            await console.PostAsync($"/api/stations/{lane}/shots", string.Create(CultureInfo.InvariantCulture,
                $$"""{"id":"ball-{{lane}}-{{number}}","ball":"{{(blue ? "blue" : "red")}}","crossings":[{{crossings}}],"laydownBoard":{{laydown:0.00}},"breakpointBoard":{{outmost + (number == 14 ? 6 : 0):0.00}},"breakpointFeet":{{turn:0.00}},"entryBoard":{{At(60):0.00}},"entryAngleDeg":{{4.5 + (blue ? 0.4 : 0) + (0.4 * Off(5)):0.00}},"speedMph":{{17 + (0.4 * Off(6)):0.00}},"speedAt":"release"}"""));
        }
    }
}
