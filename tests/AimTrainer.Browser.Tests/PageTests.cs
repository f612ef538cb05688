using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace AimTrainer.Browser.Tests;

/// <summary>Every page, in both rooms and three sizes: nothing serious by axe, no complaint of the browser, nothing cut off.</summary>
public sealed class PageTests(Chromium chromium)
{
    // Source: axe-core's rules for WCAG 2.2, levels A and AA, and its best practices; "serious" and "critical" are its own words for impact.
    // It is put into a page once and asked twice there; the library's own call puts it in, and opens another page, for each question.
    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private const string Ask = """
        async rules => {
          const found = await axe.run(document, { resultTypes: ['violations'], ...(rules ? { runOnly: rules } : {}) });
          if (found.passes.length + found.violations.length + found.incomplete.length === 0) throw new Error('axe looked at nothing');
          return found.violations.filter(one => one.impact === 'serious' || one.impact === 'critical')
            .map(one => `${one.id}: ${one.help}: ${one.nodes.map(node => node.html).join(' | ')}`);
        }
        """;

    private static readonly (string Name, string Path, bool Live)[] ProgramPages =
    [
        ("lane-turns", "/lane/5", true), ("bowler-turns", "/bowler/5", true), ("groups", "/groups", false), ("group", "/groups/tuesday-class", false), ("group-screen", "/groups/tuesday-class/screen", false),
        ("certificate", "/groups/tuesday-class/certificate?bowler=Mira", false), ("program", "/programs/juniors", false), ("needs", "/needs", true), ("people", "/people", false), ("person", "/people?bowler=Mira", false),
    ];

    /// <summary>Where screenshots go; nothing is written when it is not set.</summary>
    internal static string? PictureFolder => Environment.GetEnvironmentVariable("AIMTRAINER_PICTURES") is { Length: > 0 } folder ? folder : null;

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task EveryPage_InBothRooms_IsAccessibleAndFits(string size, bool bright)
    {
        await using var console = await ServedConsole.StartAsync(lanes: 6);
        await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
        var empty = await user.OpenAsync("/");
        await CheckAsync(empty, "lanes-first", size, bright);
        await empty.CloseAsync();

        var sessionId = await HappenAsync(console);
        (string Name, string Path, bool Live)[] pages =
        [
            ("lanes", "/", true), ("lane", "/lane/1", true), ("lane-line", "/lane/3", true), ("lane-before", "/lane/2", true), ("lane-free", "/lane/4", true),
            ("start", "/lane/4/start", false),
            ("bowler", "/bowler/1", true), ("drills", "/drills", true), ("drill", "/drills/two-point-line", false), ("drill-edit", "/drills/three-rings/edit", false),
            ("bowlers", "/bowlers", true), ("records", "/records", true), ("record", $"/records/{sessionId}", true), ("projector", "/projector", true),
            ("access", "/access", false),
            ("lines", "/lines", false),
            ("balls", "/balls", false), ("start-balls", "/lane/4/start?drill=two-balls-by-eye", false), ("lane-balls", "/lane/6", true), ("bowler-balls", "/bowler/6", true),
            ("settings", "/settings", false), ("not-found", "/not-found", false), .. ProgramPages,
        ];
        foreach (var (name, path, live) in pages)
        {
            var page = await user.OpenAsync(path, live);
            if (name == "lines")
            {
                await page.Locator("html[data-planned=yes]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
            }

            if (name == "drill-edit")
            {
                await page.GetByText("Nothing is wrong with it.").WaitForAsync();
            }

            await CheckAsync(page, name, size, bright);
            await page.CloseAsync();
        }

        Assert.Empty(user.Complaints);
    }

    [Theory]
    [InlineData("phone", 360)]
    [InlineData("portrait", 768)]
    [InlineData("tablet", 1024)]
    [InlineData("desk", 1280)]
    [InlineData("wide", 1600)]
    public async Task Pages_OfTheConsole_AreAllInReach(string size, int width)
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, new Screen(size, width, 740, Touch: width < 1200));
        var page = await user.OpenAsync("/settings", live: false);
        var pages = page.GetByRole(AriaRole.Navigation);
        if (size == "phone")
        {
            await Assertions.Expect(pages.GetByRole(AriaRole.Link)).ToHaveCountAsync(0);
            await pages.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Settings" }).TapAsync();
        }

        var links = pages.GetByRole(AriaRole.Link);
        await Assertions.Expect(links).ToHaveCountAsync(11);
        foreach (var link in await links.AllAsync())
        {
            Assert.True(await link.EvaluateAsync<bool>("""
                link => {
                  const box = link.getBoundingClientRect(), seen = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
                  return seen === link && box.left >= 0 && box.right <= innerWidth && box.height >= 36 && link.scrollWidth <= link.clientWidth;
                }
                """), $"{await link.InnerTextAsync()} is covered, cut off or small");
        }

        await CheckAsync(page, "pages", size, bright: false);
        await links.GetByText("Groups", new LocatorGetByTextOptions { Exact = true }).ClickAsync();
        await page.WaitForURLAsync("**/groups");
        Assert.Empty(user.Complaints);
    }

    [Theory]
    [InlineData("phone", false)]
    [InlineData("tablet", true)]
    public async Task Settings_OfACenterWhoseChainIsAway_SayHowTheSendingStands(string size, bool bright)
    {
        await using var console = await ServedConsole.StartAsync();
        await console.KillAsync();
        await console.StartAgainAsync("--chain", "http://127.0.0.1:9", "--token-file", console.File("token", "center-00000000"));
        await using var user = await chromium.UserAsync(console, Screen.Named(size), bright);
        var page = await user.OpenAsync("/settings", live: false);
        var panel = page.GetByRole(AriaRole.Region, new PageGetByRoleOptions { Name = "Sending to the chain" });
        await Assertions.Expect(panel).ToContainTextAsync("http://127.0.0.1:9");
        const string away = "It does not go through. The lanes go on without it.";
        for (var tries = 0; tries < 100 && !(await panel.InnerTextAsync()).Contains(away, StringComparison.Ordinal); tries++)
        {
            await page.ReloadAsync();
        }

        await Assertions.Expect(panel).ToContainTextAsync(away);
        await Assertions.Expect(panel).ToContainTextAsync("never");
        await CheckAsync(page, "settings-chain", size, bright);
        Assert.Empty(user.Complaints);
    }

    [Theory]
    [InlineData("document.querySelector('h1').style.cssText = 'color: #333; background: #222'", "color-contrast")]
    [InlineData("document.querySelector('main').append(document.createElement('select'))", "select-name")]
    [InlineData("document.querySelector('main').style.width = '2000px'", "pixels too wide")]
    public async Task Check_PageThatWasSpoilt_FindsIt(string spoil, string found)
    {
        await using var console = await ServedConsole.StartAsync();
        await using var user = await chromium.UserAsync(console, Screen.Phone);
        var page = await user.OpenAsync("/settings", live: false);
        await page.EvaluateAsync(spoil);

        var fault = await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(() => CheckAsync(page, "spoilt", "phone", bright: false));

        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
    }

    private static async Task<string> HappenAsync(ServedConsole console)
    {
        await console.SessionAsync(1, "Mira", "fitted-target");
        double[] boards = [10, 11.5, 8, 10.5, 12, 9, 10];
        for (var i = 0; i < boards.Length; i++)
        {
            await console.ShotAsync(1, $"shot-{i}", (15, boards[i]));
        }

        await console.ActAsync(1, """{"kind":"void","number":3,"reason":"slipped"}""");
        await console.SessionAsync(2, "Jo", "easy-warm-up", begin: false);
        await console.SessionAsync(3, "Sam", "two-point-line", "left");
        await console.ShotAsync(3, "line-1", (15, 15.5), (40, 6));
        await console.ShotAsync(3, "line-2", (15, 13), (40, 8));
        await console.PostAsync(
            "/api/stations/6/sessions",
            """{"bowler":"Kim","drill":"two-balls-by-eye","hand":"right","seed":1,"balls":[{"role":"reference","name":"Old one"},{"role":"other","name":"A new one with a long name"}]}""");
        await console.ActAsync(6, """{"kind":"begin"}""");
        await console.ShotAsync(6, "ball-1", (15, 10), (42, 6));
        await console.ShotAsync(6, "ball-2", (15, 10.5), (42, 9));
        await console.ShotAsync(6, "ball-3", (15, 13), (42, 10));
        await console.PutAsync("/api/balls", """{"bowler":"Kim","name":"Old one","surface":"2000 grit","weightPounds":15,"radiusOfGyrationInches":2.487,"differentialInches":0.048,"layout":"pin above the ring finger","gamesSinceSurfaceWork":30}""");
        await console.PostAsync("/api/balls/surfaces", """{"bowler":"Kim","ball":"Old one","kind":"scan","roughness":31.5,"roughnessUnit":"\u00b5in Ra","at":"2026-03-01"}""");
        await console.PostAsync("/api/balls/surfaces", """{"bowler":"Kim","ball":"Old one","kind":"work","finish":"1000 grit","at":"2026-03-07","note":"by hand"}""");
        await console.GroupAsync();
        using var listed = JsonDocument.Parse(await console.GetAsync("/api/sessions?bowler=Mira"));
        return listed.RootElement[0].GetProperty("sessionId").GetString()!;
    }

    /// <summary>Looks at a page in both rooms, and takes its picture when pictures are wanted.</summary>
    internal static async Task CheckAsync(IPage page, string name, string size, bool bright)
    {
        await page.EvaluateAsync(Axe);
        await AxeAsync(page, $"{name}, {size}", null);

        // The other room has other colours and nothing else.
        await page.EvaluateAsync("room => { document.documentElement.dataset.room = room; }", bright ? "dark" : "bright");
        await AxeAsync(page, $"{name}, {size}, the other room", ["color-contrast"]);
        await page.EvaluateAsync("room => { document.documentElement.dataset.room = room; }", bright ? "bright" : "dark");

        // What is wider than its screen makes the whole page scroll sideways.
        var over = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"{name} on a {size} is {over} pixels too wide");

        // No label of a drawing may leave its drawing.
        var cut = await page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll('svg text')].filter(text => {
              const svg = text.ownerSVGElement.getBoundingClientRect(), box = text.getBoundingClientRect();
              return svg.width > 0 && (box.left < svg.left - 1 || box.right > svg.right + 1 || box.top < svg.top - 1 || box.bottom > svg.bottom + 1);
            }).map(text => `${text.ownerSVGElement.getAttribute('aria-label')}: ${text.textContent}`)
            """);
        Assert.Empty(cut);
        if (PictureFolder is { } folder)
        {
            Directory.CreateDirectory(folder);

            // In a picture of a whole page what sticks to the window would lie over what is above its end. The page's own policy forbids a
            // style sheet for the picture.
            const string Stick = "position => document.querySelectorAll('.send, .plan-see').forEach(each => { each.style.position = position; })";
            await page.EvaluateAsync(Stick, "static");
            await page.ScreenshotAsync(new PageScreenshotOptions
            {
                Path = Path.Combine(folder, $"{name}-{size}-{(bright ? "bright" : "dark")}.png"),
                FullPage = name is not "drills",
            });
            await page.EvaluateAsync(Stick, "");
            if (name == "record")
            {
                await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
                await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"record-print-{size}.png"), FullPage = true });
            }
        }
    }

    private static async Task AxeAsync(IPage page, string where, string[]? rules)
    {
        var serious = await page.EvaluateAsync<string[]>(Ask, rules);
        Assert.True(serious.Length == 0, $"{where}\n{string.Join('\n', serious)}");
    }
}
