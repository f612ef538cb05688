using Microsoft.Playwright;

namespace AimTrainer.Browser.Tests;

/// <summary>What a person does on the page of a lane, by the words that are on it.</summary>
internal static class LanePageExtensions
{
    public static ILocator Button(this IPage page, string name) => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = name, Exact = true });

    public static ILocator Strip(this IPage page) => page.GetByRole(AriaRole.Slider).First;

    /// <summary>The pad's button of a board; in the middle of others, so by its whole name.</summary>
    public static ILocator Board(this IPage page, string board) => page.Locator("#pad").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = board, Exact = true });

    public static ILocator LogShot(this IPage page, int number) => page.Button($"Log shot {number}");

    /// <summary>Two taps: the board, then the button. Done when the page is for the next shot.</summary>
    public static async Task LogAsync(this IPage page, int number, string board)
    {
        await page.Board(board).TapAsync();
        await page.LogShot(number).TapAsync();
        await page.ShotsAsync(number);
    }

    /// <summary>Waits until a page shows this many shots of the block.</summary>
    public static Task ShotsAsync(this IPage page, int count) => Assertions.Expect(page.Locator("#shots > li")).ToHaveCountAsync(count);

    /// <summary>What the page says of the session: figures, shots, target.</summary>
    public static Task<string> SaidAsync(this IPage page) => page.EvaluateAsync<string>(
        "() => ['phase', 'now', 'figures', 'shots'].map(id => document.getElementById(id).textContent.trim()).join('\\n')");
}
