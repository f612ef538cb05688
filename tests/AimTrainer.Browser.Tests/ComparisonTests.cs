using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A whole comparison of two balls by tapping, from the start page to the record, while the bowler's phone looks on.</summary>
public sealed class ComparisonTests(Chromium chromium)
{
    [Fact]
    public async Task Comparison_TappedOnAPhone_IsDoneWithEveryBallAtEveryLine()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var coach = await chromium.UserAsync(console, Screen.Phone);
        await using var bowler = await chromium.UserAsync(console, Screen.Phone);
        var page = await coach.OpenAsync("/lane/1/start?drill=two-balls-by-eye", live: false);
        var phone = await bowler.OpenAsync("/bowler/1");
        await page.GetByLabel("Bowler", new PageGetByLabelOptions { Exact = true }).FillAsync("Mira");
        await page.GetByLabel("Reference ball").FillAsync("Old one");
        await page.GetByLabel("Other ball").FillAsync("OLD ONE");
        await page.Button("Start").TapAsync();
        await Expect(page.Locator("#wrong")).ToContainTextAsync("are the same ball");
        await page.GetByLabel("Other ball").FillAsync("New one");
        await page.Button("Start").TapAsync();
        await Expect(page.GetByText("Wipe the ball with a dry towel").First).ToBeVisibleAsync();
        await page.Button("Begin: show the first target").TapAsync();
        await Expect(page.Locator("#turn-main")).ToHaveTextAsync("Throw Old one");
        Assert.InRange((await page.Locator("#turn-main").BoundingBoxAsync())!.Height, 20, 200);
        await Expect(page.Locator("#turn-more")).ToHaveTextAsync("4 more good throws with it · line 1 of 3");
        await Expect(phone.Locator("#now")).ToHaveTextAsync("Throw Old one");
        await Expect(phone.Locator("#ball")).ToContainTextAsync("dry towel");

        // The wrong ball is said: it counts for the one that was thrown, and the due one stays due.
        await page.GetByLabel("New one", new PageGetByLabelOptions { Exact = true }).CheckAsync();
        await ThrowAsync(page, 1, "10", "6");
        await Expect(page.Locator("#shots > li").First).ToContainTextAsync("New one, not Old one, which is still due");
        await Expect(page.Locator("#turn-main")).ToHaveTextAsync("Throw Old one");
        await Expect(page.Locator("#turn-balls li").Nth(1)).ToContainTextAsync("1 of 4 good");

        // A throw that misses the arrows is none that counts.
        await ThrowAsync(page, 2, "13", "6");
        await Expect(page.Locator("#shots > li").First).ToContainTextAsync("no good throw: second arrow missed");

        var (checks, last) = (0, 2);
        while (await page.Locator("#turn").IsVisibleAsync())
        {
            var (due, arrow) = (await page.Locator("#turn-main").TextContentAsync(), await ArrowAsync(page));
            checks += due!.StartsWith("Lane check", StringComparison.Ordinal) ? 1 : 0;
            await Expect(phone.Locator("#now")).ToHaveTextAsync(due);
            last++;
            await PickAsync(page, arrow, (await page.Locator(".strip").Nth(1).Locator("small").TextContentAsync())!.Split('\u00a0', ' ')[1]);
            await page.LogShot(last).TapAsync();
            if (last == 4)
            {
                // Both ways are on the drawing until they are cleared.
                await Expect(page.Locator("svg.lane polyline")).ToHaveCountAsync(2);
                await page.Button("Clear the ways").TapAsync();
                await Expect(page.Locator("svg.lane polyline")).ToHaveCountAsync(0);
            }

            await Expect(page.Locator("#over, #turn").And(page.Locator(":visible")).First).ToBeVisibleAsync();
            await page.WaitForFunctionAsync(
                "n => !document.getElementById('over').hidden || document.getElementById('send').textContent.startsWith(`Log shot ${n}`)", last + 1);
            Assert.InRange(last, 3, 60);
        }

        Assert.InRange(checks, 3, 4);
        await Expect(page.GetByText("The session is over", new PageGetByTextOptions { Exact = true })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "See the record" }).TapAsync();
        await Expect(page.GetByText("reference: Old one, other: New one")).ToBeVisibleAsync();
        using var listed = JsonDocument.Parse(await console.GetAsync("/api/sessions"));
        var session = Assert.Single(listed.RootElement.EnumerateArray());
        using var record = JsonDocument.Parse(await console.GetAsync($"/api/sessions/{session.GetProperty("sessionId").GetString()}"));
        var shots = record.RootElement.GetProperty("blocks")[0].GetProperty("shots").EnumerateArray().Select(shot => shot.GetProperty("compared")).ToList();
        Assert.Equal("compared", record.RootElement.GetProperty("blocks")[0].GetProperty("ended").GetString());
        foreach (var cell in shots.GroupBy(shot => (shot.GetProperty("line").GetString(), shot.GetProperty("ball").GetString())))
        {
            Assert.InRange(cell.Count(shot => shot.GetProperty("good").GetBoolean()), 4, 7);
        }

        Assert.Equal(6, shots.Select(shot => (shot.GetProperty("line").GetString(), shot.GetProperty("ball").GetString())).Distinct().Count());
        Assert.All(coach.Complaints.Concat(bowler.Complaints), complaint => Assert.Contains("409", complaint, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Balls_DescribedAndWorkedOnByTapping_AreKept()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var page = await user.OpenAsync("/balls", live: false);
        await page.GetByLabel("Bowler", new PageGetByLabelOptions { Exact = true }).FillAsync("Mira");
        await page.GetByLabel("Name of the ball").FillAsync("Blue");
        await page.GetByLabel("Weight, pounds").FillAsync("99");
        await page.Button("Keep it").TapAsync();
        await Expect(page.Locator("#ball-wrong")).ToContainTextAsync("6 to 16");
        await page.GetByLabel("Weight, pounds").FillAsync("14,5");
        await page.GetByLabel("Games since surface work").FillAsync("20");
        await page.Button("Keep it").TapAsync();
        await Expect(page.Locator(".ball")).ToContainTextAsync("14.5 lb");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Surface of Blue" }).TapAsync();
        await page.GetByLabel("Grit or finish now").FillAsync("1000 grit");
        await page.Locator("#surface-form").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Keep it" }).TapAsync();
        await Expect(page.Locator(".surfaces li")).ToContainTextAsync("worked on: 1000 grit, after 20 games");
        await Expect(page.Locator(".ball")).ToContainTextAsync("1000 grit, 0 games since it was worked on");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Change what is known of Blue" }).TapAsync();
        await Expect(page.GetByLabel("Weight, pounds")).ToHaveValueAsync("14.5");
        Assert.All(user.Complaints, complaint => Assert.Contains("400", complaint, StringComparison.Ordinal));
    }

    /// <summary>The board in the middle of the target at the arrows.</summary>
    private static async Task<string> ArrowAsync(IPage page) => (await page.Locator(".strip").First.Locator("small").TextContentAsync())!.Split('\u00a0', ' ')[1];

    private static async Task PickAsync(IPage page, string near, string far)
    {
        await page.Board(near).TapAsync();
        await page.Board(far).TapAsync();
    }

    private static async Task ThrowAsync(IPage page, int number, string near, string far)
    {
        await PickAsync(page, near, far);
        await page.LogShot(number).TapAsync();
        await page.ShotsAsync(number);
    }
}
