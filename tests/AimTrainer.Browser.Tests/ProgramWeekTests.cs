using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A week of a program from an empty folder, by a coach who signs in: group, bowlers, lane, turns, progress. Invented people.</summary>
public sealed class ProgramWeekTests(Chromium chromium)
{
    private const string Words = "correct horse battery staple";

    private const int ShotsEach = 10;

    [Fact]
    public async Task Week_ByACoachAccount_FromTheGroupToItsProgress()
    {
        await using var console = await ServedConsole.StartAsync(passphrase: Words);
        await using var coach = await chromium.UserAsync(console, Screen.Tablet);
        var page = await coach.OpenAsync("/groups", live: false);
        await page.GetByLabel("Passphrase").FillAsync(Words);
        await page.Button("Sign in").TapAsync();
        await page.GetByLabel("Name", new PageGetByLabelOptions { Exact = true }).FillAsync("Back again");
        await page.GetByLabel("Program", new PageGetByLabelOptions { Exact = true }).SelectOptionAsync("return-with-care");
        await page.Button("Make the group").TapAsync();
        await page.WaitForURLAsync("**/groups/back-again");
        foreach (var name in (string[])["Ann", "Ben"])
        {
            await page.GetByLabel("Name", new PageGetByLabelOptions { Exact = true }).FillAsync(name);
            await page.Button("Add").TapAsync();
            await Expect(page.GetByRole(AriaRole.Rowheader, new PageGetByRoleOptions { Name = name })).ToBeVisibleAsync();
        }

        await page.Button("Give lanes").TapAsync();
        await Expect(page.GetByText("Lanes for those who have none")).ToHaveCountAsync(0);
        await Expect(page.GetByText("Ask everybody how the arm feels")).ToBeVisibleAsync();
        await page.Button("Start on all lanes").TapAsync();
        await Expect(page.Locator(".told li")).ToHaveCountAsync(2);

        var lane = await coach.OpenAsync("/lane/1");
        foreach (var name in (string[])["Ann", "Ben"])
        {
            await Expect(lane.Locator("#phase")).ToContainTextAsync(name);
            await lane.GetByLabel("as usual").CheckAsync();
            await lane.Button("Begin: show the first target").TapAsync();
            await ThrowAsync(lane, 1);
        }

        for (var shot = 2; shot <= ShotsEach; shot++)
        {
            foreach (var name in (string[])["Ann", "Ben"])
            {
                await Expect(lane.Locator("#phase")).ToContainTextAsync(name);
                await ThrowAsync(lane, shot);
            }
        }

        await Expect(lane.Locator("#over")).ToBeVisibleAsync();
        await Expect(lane.Locator("#turn-list .done")).ToHaveCountAsync(2);
        var group = await coach.OpenAsync("/groups/back-again", live: false);
        await Expect(group.GetByRole(AriaRole.Cell, new PageGetByRoleOptions { Name = "1 of 4" })).ToHaveCountAsync(2);
        var certificate = await coach.OpenAsync("/groups/back-again/certificate?bowler=Ann", live: false);
        await Expect(certificate.GetByText("Ann has done 1 of 4 sessions.")).ToBeVisibleAsync();
        Assert.Empty(coach.Complaints);
    }

    [Fact]
    public async Task Turns_OnTheLanesPage_LateSwappedAndTakenBack()
    {
        await using var console = await ServedConsole.StartAsync();
        await console.SessionAsync(1, "Ann", "ten-shot-spread");
        await using var coach = await chromium.UserAsync(console, Screen.Tablet);
        var page = await coach.OpenAsync("/lane/1");
        await page.GetByText("Another bowler joins").TapAsync();
        await page.GetByLabel("Name", new PageGetByLabelOptions { Exact = true }).FillAsync("Ben");
        await page.Button("Joins the lane").TapAsync();
        await Expect(page.Locator("#turn-list > li")).ToHaveCountAsync(2);
        await ThrowAsync(page, 1);
        await page.Button("Begin: show the first target").TapAsync();
        await page.Button("Take back Ann's shot 1").TapAsync();
        await Expect(page.Locator("#phase")).ToContainTextAsync("Ben");
        await page.Button("Ann: Throws now").TapAsync();
        await Expect(page.Locator("#shots")).ToContainTextAsync("taken back");
        var phone = await coach.OpenAsync("/bowler/1");
        await Expect(phone.Locator("#who")).ToHaveTextAsync("· A. throws, then B.");
        await page.Button("Ann: Leaves").TapAsync();
        await Expect(page.Locator("#phase")).ToContainTextAsync("Ben");
        await Expect(page.Button("Ann: Is back")).ToBeVisibleAsync();
        Assert.Empty(coach.Complaints);
    }

    private static async Task ThrowAsync(IPage lane, int number)
    {
        await lane.Board("10").TapAsync();
        await lane.LogShot(number).TapAsync();
        await Expect(lane.Locator("#waiting > *")).ToHaveCountAsync(0);
    }
}
