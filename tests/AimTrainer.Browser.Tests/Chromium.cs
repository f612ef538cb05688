using AimTrainer.Browser.Tests;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Chromium))]

namespace AimTrainer.Browser.Tests;

/// <summary>One Chromium for all tests; each browser of a test is a context of its own, with its own storage.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const float Patience = 60_000;

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        // Far above what anything takes, so that a busy machine fails nothing.
        Assertions.SetDefaultExpectTimeout(Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox"] });
    }

    internal async Task<BrowserUser> UserAsync(ServedConsole console, Screen screen, bool bright = false, bool scripts = true)
    {
        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = console.Address,
            ViewportSize = new ViewportSize { Width = screen.Width, Height = screen.Height },
            HasTouch = screen.Touch,
            ColorScheme = bright ? ColorScheme.Light : ColorScheme.Dark,
            ReducedMotion = ReducedMotion.Reduce,
            JavaScriptEnabled = scripts,
            TimezoneId = "Asia/Tokyo",
        });
        context.SetDefaultTimeout(Patience);
        return new BrowserUser(context);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
