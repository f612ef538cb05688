using System.Diagnostics;
using System.Security.Cryptography;

namespace AimTrainer.Faults.Tests;

/// <summary>An X server without a screen (Xvfb), whose picture is a file that a test can look at.</summary>
internal sealed class DisplayScreen : IDisposable
{
    private readonly Process _server;
    private readonly TemporaryFolder _folder = new();

    public DisplayScreen(params string[] more)
    {
        var picture = _folder.File("picture");
        Directory.CreateDirectory(picture);
        _server = Process.Start(new ProcessStartInfo(
            "Xvfb", ["-displayfd", "1", "-screen", "0", "640x360x24", "-fbdir", picture, "-nolisten", "tcp", "-noreset", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        _server.BeginErrorReadLine();
        Name = ":" + (_server.StandardOutput.ReadLine() ?? throw new InvalidOperationException("Xvfb did not start"));
    }

    /// <summary>What DISPLAY is set to.</summary>
    public string Name { get; }

    /// <summary>To start a program through, so that it finds this screen.</summary>
    public IReadOnlyList<string> Inside => ["env", $"DISPLAY={Name}"];

    /// <summary>A word for what is on the screen now: another picture has another.</summary>
    public string Picture()
    {
        using var file = new FileStream(Path.Combine(_folder.File("picture"), "Xvfb_screen0"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return Convert.ToHexString(SHA256.HashData(file));
    }

    /// <summary>Waits until the screen shows something else.</summary>
    public async Task<string> OtherThanAsync(string picture, CancellationToken cancellationToken)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        while (Picture() == picture)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(20), patience.Token);
        }

        return await StillAsync(patience.Token);
    }

    /// <summary>Unplugs the only monitor.</summary>
    public async Task UnplugAsync(CancellationToken cancellationToken)
    {
        using var randr = Process.Start(new ProcessStartInfo("xrandr", ["-d", Name, "--output", "screen", "--off"]) { RedirectStandardError = true })!;

        // It complains that a screen of no size cannot be; the monitor is away all the same.
        await randr.StandardError.ReadToEndAsync(cancellationToken);
        await randr.WaitForExitAsync(cancellationToken);
    }

    /// <summary>The server is gone, with whatever it showed.</summary>
    public void Kill()
    {
        _server.Kill();
        _server.WaitForExit();
    }

    public void Dispose()
    {
        if (!_server.HasExited)
        {
            Kill();
        }

        _server.Dispose();
        _folder.Dispose();
    }

    /// <summary>Frames arrive in pieces: waits until two looks in a row find the same.</summary>
    private async Task<string> StillAsync(CancellationToken cancellationToken)
    {
        var (last, now) = ("", Picture());
        while (now != last)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(50), cancellationToken);
            (last, now) = (now, Picture());
        }

        return now;
    }
}
