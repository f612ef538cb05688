using System.Diagnostics;

namespace AimTrainer.Browser.Tests;

/// <summary>A screen that nobody sees (Xvfb), for the windows of the program.</summary>
internal sealed class XScreen : IDisposable
{
    private readonly Process _server;

    private XScreen(Process server, string name) => (_server, Name) = (server, name);

    /// <summary>Its display, as <c>:7</c>.</summary>
    public string Name { get; }

    public static async Task<XScreen> StartAsync(int width, int height)
    {
        var server = Process.Start(new ProcessStartInfo("Xvfb", ["-displayfd", "1", "-screen", "0", $"{width}x{height}x24", "-nolisten", "tcp", "-noreset"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        server.ErrorDataReceived += (_, _) => { };
        server.BeginErrorReadLine();
        return new XScreen(server, ":" + (await server.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException("Xvfb did not start")));
    }

    public void Dispose()
    {
        _server.Kill();
        _server.WaitForExit();
        _server.Dispose();
    }
}
