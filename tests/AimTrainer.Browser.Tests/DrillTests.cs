using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A drill is copied, broken, mended and kept.</summary>
public sealed class DrillTests(Chromium chromium)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("tablet")]
    public async Task Drill_EditedWithAMistake_ShowsItWhereItIs(string size)
    {
        await using var console = await ServedConsole.StartAsync();
        await using var coach = await chromium.UserAsync(console, Screen.Named(size));
        var drills = await coach.OpenAsync("/drills");
        var page = await coach.OpenAsync("/drills/three-rings", live: false);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Copy and edit" }).TapAsync();
        var text = page.GetByLabel("The drill");
        await Expect(page.GetByText("Nothing is wrong with it.")).ToBeVisibleAsync();
        var good = await text.InputValueAsync();
        var line = good.Split('\n').ToList().FindIndex(each => each.Contains("\"widthBoards\": 4", StringComparison.Ordinal)) + 1;
        await text.FillAsync(good.Replace("\"widthBoards\": 4", "\"widthBoards\": 99", StringComparison.Ordinal));

        // The finding names line, path, what was found and what is allowed; the line is marked beside the text, and can be jumped to.
        await Expect(page.Locator("#findings li")).ToHaveCountAsync(1);
        await Expect(page.Locator("#findings li")).ToContainTextAsync("aims[0].widthBoards");
        await Expect(page.Locator("#findings li")).ToContainTextAsync(new Regex("found 99; allowed: "));
        await Expect(page.Locator("#lines .wrong")).ToHaveTextAsync($"{line}");
        await Expect(page.Button("Save as my own")).ToBeDisabledAsync();
        await page.Button($"line {line}").TapAsync();
        var selected = await page.EvaluateAsync<string>(
            "() => { const at = document.activeElement; return getSelection().toString() || at.value.slice(at.selectionStart, at.selectionEnd); }");
        Assert.Contains("99", selected, StringComparison.Ordinal);

        // Half a text, as it is while somebody types.
        await text.FillAsync(good[..(good.Length / 2)]);
        await Expect(page.Locator("#lines .wrong")).ToHaveCountAsync(1);
        await text.FillAsync(good.Replace("\"name\": \"Three rings\"", "\"name\": \"Rings of mine\"", StringComparison.Ordinal));
        await Expect(page.GetByText("Nothing is wrong with it.")).ToBeVisibleAsync();
        await page.Button("Save as my own").TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Name = "Rings of mine" })).ToBeVisibleAsync();
        await Expect(page.GetByText("your own")).ToBeVisibleAsync();

        // The list that is open in another page follows, within a beat.
        await Expect(drills.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Rings of mine" })).ToBeVisibleAsync();
        await drills.GetByRole(AriaRole.Searchbox).FillAsync("of mine");
        await Expect(drills.Locator("[data-sift]:visible")).ToHaveCountAsync(1);
        Assert.Empty(coach.Complaints);
    }
}
