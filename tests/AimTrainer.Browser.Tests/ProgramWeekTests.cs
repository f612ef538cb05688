using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace AimTrainer.Browser.Tests;

/// <summary>A program from an empty folder to its certificate by a coach who signs in, and a comparison of balls by a group. Invented people.</summary>
public sealed class ProgramWeekTests(Chromium chromium)
{
    private const string Words = "correct horse battery staple";

    private const int ShotsEach = 10;

    // A whole program that fits into a test: a shipped one takes weeks.
    private const string OneEvening = """
        {
          "format": 1, "id": "one-evening", "name": "One evening", "purpose": "Measures ten shots.", "whoFor": "Anybody.",
          "joining": { "who": "Anybody.", "minors": "yes" }, "makeUp": { "withinDays": 0, "most": 0 }, "asksHowArmFeels": true,
          "cautions": ["Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery."],
          "levels": [{ "name": "all", "about": "Everybody." }],
          "weeks": [{ "name": "Only week", "sessions": [{ "name": "Ten shots", "retentionTest": true, "drills": [{ "drill": "ten-shot-spread", "goals": [{ "level": "all", "heldShare": 0.5 }] }] }] }]
        }
        """;

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task Program_ByACoachWhoSignsIn_FromTheGroupToTheCertificate(string size, bool bright)
    {
        await using var console = await ServedConsole.OnNetworkAsync(Words, lanes: 1);
        Directory.CreateDirectory(Path.Combine(console.Folder, "programs"));
        console.File(Path.Combine("programs", "one-evening.json"), OneEvening);
        await using var coach = await chromium.UserAsync(console, Screen.Named(size), bright);
        var page = await coach.OpenAsync("/groups", live: false);
        await page.WaitForURLAsync("**/sign-in?next=%2Fgroups");
        await page.GetByLabel("Passphrase").FillAsync(Words);
        await page.Button("Sign in").TapAsync();
        await page.WaitForURLAsync("**/groups");
        await MakeAsync(page, "Back again", "one-evening", "Ann", "Ben");
        await Expect(page.GetByText("Ask everybody how the arm feels")).ToBeVisibleAsync();
        await page.Button("Start on all lanes").TapAsync();
        await Expect(page.Locator(".told li")).ToHaveCountAsync(2);

        // From the list of who was started to the lane.
        await page.Locator(".told").GetByRole(AriaRole.Link).First.TapAsync();
        await page.WaitForURLAsync("**/lane/1");
        foreach (var name in (string[])["Ann", "Ben"])
        {
            await Expect(page.Locator("#phase")).ToContainTextAsync(name);
            await page.GetByLabel("as usual").CheckAsync();
            await page.Button("Begin: show the first target").TapAsync();
            await ThrowAsync(page, 1);
        }

        for (var shot = 2; shot <= ShotsEach; shot++)
        {
            foreach (var name in (string[])["Ann", "Ben"])
            {
                await Expect(page.Locator("#phase")).ToContainTextAsync(name);
                await ThrowAsync(page, shot);
            }
        }

        await Expect(page.Locator("#over")).ToBeVisibleAsync();
        await Expect(page.Locator("#turn-list .done")).ToHaveCountAsync(2);
        await page.GotoAsync("/groups/back-again");
        await Expect(page.GetByText("1 of 1", new PageGetByTextOptions { Exact = true })).ToHaveCountAsync(2);
        await Expect(page.GetByText("The program is over: everybody has thrown every session.")).ToBeVisibleAsync();
        await PageTests.CheckAsync(page, "group-over", size, bright);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Certificate of Ann" }).TapAsync();
        await Expect(page.GetByText("has thrown the one session of this program, on ")).ToBeVisibleAsync();
        await Expect(page.GetByText("not known; the crossing of 10 test shots is known, and 30 are needed")).ToBeVisibleAsync();
        await Expect(page.GetByText("reached, 10 of 10")).ToBeVisibleAsync();
        await PageTests.CheckAsync(page, "certificate-whole", size, bright);
        await PrintAsync(page, size);
        Assert.Empty(coach.Complaints);
    }

    [Fact]
    public async Task Clinic_TwoBallsEach_IsRunFromThePagesOnATablet()
    {
        await using var console = await ServedConsole.StartAsync();
        await using var coach = await chromium.UserAsync(console, Screen.Tablet, bright: true);
        var page = await coach.OpenAsync("/groups", live: false);

        // Nobody came in the first week: the second is open, and the first may be made up.
        await page.GetByLabel("First day of the first week").FillAsync(DateTime.UtcNow.Date.AddDays(-8).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        await MakeAsync(page, "Two balls", "ball-comparison-clinic", "Ann", "Ben");
        await Expect(page.GetByLabel("Reference ball").Locator("visible=true")).ToHaveCountAsync(0);
        await page.GetByLabel("Drill for all who are here").SelectOptionAsync("two-balls-one-line");
        await Expect(page.GetByText("The page says which one is thrown; throw them alike.")).ToBeVisibleAsync();
        await BallsAsync(page, "Ann", "Red", "Blue");
        await PageTests.CheckAsync(page, "group-balls", "tablet", bright: true);
        await page.Button("Start on all lanes").TapAsync();
        await Expect(page.Locator(".told li").Nth(0)).ToHaveTextAsync("Ann: lane 1");
        await Expect(page.Locator(".told li").Nth(1)).ToContainTextAsync("Ben: this drill compares balls, and no ball is chosen for \"reference\", \"other\": name a ball for each");

        // Ben names his; what Ann named is kept, and nobody who throws is started again.
        await page.ReloadAsync();
        await page.GetByLabel("Drill for all who are here").SelectOptionAsync("two-balls-one-line");
        await Expect(Group(page, "Ann").GetByLabel("Other ball")).ToHaveValueAsync("Blue");
        await BallsAsync(page, "Ben", "Old", "New");
        await page.Button("Start on all lanes").TapAsync();
        await Expect(page.Locator(".told li").Nth(0)).ToHaveTextAsync("Ann: Ann is on this lane already");
        await Expect(page.Locator(".told li").Nth(1)).ToHaveTextAsync("Ben: lane 1");

        // One more comes late, to the lane's page.
        await page.Locator(".told").GetByRole(AriaRole.Link).First.TapAsync();
        await page.WaitForURLAsync("**/lane/1");
        await page.GetByText("Another bowler joins").TapAsync();
        await page.GetByLabel("Name", new PageGetByLabelOptions { Exact = true }).FillAsync("Cy");
        await page.GetByLabel("Reference ball").FillAsync("One");
        await page.GetByLabel("Other ball").FillAsync("Two");
        await page.Button("Joins the lane").TapAsync();
        await Expect(page.Locator("#turn-list > li")).ToHaveCountAsync(3);
        await page.Button("Cy: Leaves").TapAsync();

        // Each has her own two balls, in the order of the drill: A B B A.
        foreach (var (name, ball) in ((string, string)[])[("Ann", "Red"), ("Ben", "Old")])
        {
            await Expect(page.Locator("#phase")).ToContainTextAsync(name);
            await page.Button("Begin: show the first target").TapAsync();
            await LogAsync(page, 1, ball);
        }

        await LogAsync(page, 2, "Blue");
        await LogAsync(page, 2, "New");
        for (var shot = 0; shot < 28; shot++)
        {
            await console.ShotAsync(1, $"rest-{shot}", (15, 15), (40, 7 + (shot % 3)));
        }

        await Expect(page.Locator("#turn-list .done")).ToHaveCountAsync(2);
        await page.GotoAsync("/groups/two-balls");
        await Expect(page.GetByRole(AriaRole.Cell, new PageGetByRoleOptions { Name = "1 of 4" })).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Balls of Ann compared" }).TapAsync();
        await Expect(page.GetByText("Blue").Locator("visible=true").First).ToBeVisibleAsync();
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

    /// <summary>A group with its bowlers, all on lane 1, begun on the page of groups.</summary>
    private static async Task MakeAsync(IPage page, string name, string program, params string[] bowlers)
    {
        await page.GetByLabel("Name", new PageGetByLabelOptions { Exact = true }).FillAsync(name);
        await page.GetByLabel("Program", new PageGetByLabelOptions { Exact = true }).SelectOptionAsync(program);
        await page.Button("Make the group").TapAsync();
        await page.WaitForURLAsync("**/groups/*");
        foreach (var bowler in bowlers)
        {
            await page.GetByLabel("Name", new PageGetByLabelOptions { Exact = true }).FillAsync(bowler);
            await page.Button("Add").TapAsync();
            await Expect(page.Locator("th").GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = bowler })).ToBeVisibleAsync();
        }

        await page.Button("Give lanes").TapAsync();
        await Expect(page.GetByText("Lanes for those who have none")).ToHaveCountAsync(0);
    }

    private static ILocator Group(IPage page, string bowler) => page.GetByRole(AriaRole.Group, new PageGetByRoleOptions { Name = bowler, Exact = true });

    private static async Task BallsAsync(IPage page, string bowler, string reference, string other)
    {
        await Group(page, bowler).GetByLabel("Reference ball").FillAsync(reference);
        await Group(page, bowler).GetByLabel("Other ball").FillAsync(other);
    }

    /// <summary>A shot with the ball that is due, by its two boards.</summary>
    private static async Task LogAsync(IPage page, int number, string ball)
    {
        await Expect(page.Locator("#turn-main")).ToHaveTextAsync($"Throw {ball}");
        await page.Board("15").TapAsync();
        await page.Board("7").TapAsync();
        await page.LogShot(number).TapAsync();
        await Expect(page.Locator("#waiting > *")).ToHaveCountAsync(0);
    }

    /// <summary>On paper: one page, without what only a screen has.</summary>
    private static async Task PrintAsync(IPage page, string size)
    {
        var pdf = Encoding.Latin1.GetString(await page.PdfAsync(new PagePdfOptions { Format = "A4" }));
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        await Expect(page.Button("Print it")).ToBeHiddenAsync();
        await Expect(page.GetByText("Ann", new PageGetByTextOptions { Exact = true })).ToBeVisibleAsync();
        if (PageTests.PictureFolder is { } folder)
        {
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"certificate-print-{size}.png"), FullPage = true });
            await File.WriteAllBytesAsync(Path.Combine(folder, $"certificate-{size}.pdf"), Encoding.Latin1.GetBytes(pdf));
        }

        Assert.Single(Regex.Matches(pdf, @"/Type\s*/Page\b"));
    }

    private static async Task ThrowAsync(IPage lane, int number)
    {
        await lane.Board("10").TapAsync();
        await lane.LogShot(number).TapAsync();
        await Expect(lane.Locator("#waiting > *")).ToHaveCountAsync(0);
    }
}
