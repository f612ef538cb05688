using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace AimTrainer.Browser.Tests;

/// <summary>Somebody with a browser, whose console is watched: whatever it complains of is kept.</summary>
internal sealed class BrowserUser(IBrowserContext context) : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> _complaints = new();

    public IBrowserContext Context => context;

    /// <summary>Everything the browser complained of; the dead line of a killed host is no fault of the page and left out.</summary>
    public IEnumerable<string> Complaints => _complaints.Where(text => !text.Contains("net::ERR_", StringComparison.Ordinal));

    /// <summary>Opens a page and waits until it is alive: what it loads is there, and what it follows has come.</summary>
    public async Task<IPage> OpenAsync(string path, bool live = true)
    {
        var page = await context.NewPageAsync();
        page.Console += (_, message) => { if (message.Type is "error" or "warning") { _complaints.Enqueue($"{page.Url}: {message.Text}"); } };
        page.PageError += (_, error) => _complaints.Enqueue($"{page.Url}: {error}");
        await page.GotoAsync(path);
        if (live)
        {
            await page.Locator("html[data-link=up]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        }

        return page;
    }

    public ValueTask DisposeAsync() => context.DisposeAsync();
}
