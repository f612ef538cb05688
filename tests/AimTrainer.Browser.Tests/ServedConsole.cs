using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Reflection;

namespace AimTrainer.Browser.Tests;

/// <summary><c>aimtrainer serve</c> as a process of its own, on a data folder and an address that outlive it.</summary>
internal sealed class ServedConsole : IAsyncDisposable
{
    // Only so that a program that hangs fails the test instead of holding up everything; far above what a start takes.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    private static readonly string Program = typeof(ServedConsole).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(metadata => metadata.Key == "Program").Value!;

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-browser-").FullName;
    private readonly int _lanes;
    private readonly HttpClient _http;
    private Process? _process;

    private ServedConsole(int lanes)
    {
        _lanes = lanes;
        Address = $"http://127.0.0.1:{FreePort()}";
        _http = new HttpClient { BaseAddress = new Uri(Address) };
    }

    public string Address { get; }

    /// <summary>Starts one with an empty data folder.</summary>
    /// <param name="lanes">How many.</param>
    /// <param name="passphrase">The coach's, set before the start; null for none.</param>
    public static async Task<ServedConsole> StartAsync(int lanes = 1, string? passphrase = null)
    {
        var console = new ServedConsole(lanes);
        if (passphrase is not null)
        {
            using var setting = Process.Start(new ProcessStartInfo("dotnet", [Program, "passphrase", "--data", console._folder]) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
            await setting.StandardInput.WriteLineAsync(passphrase);
            setting.StandardInput.Close();
            await setting.WaitForExitAsync().WaitAsync(Patience);
            Assert.Equal(0, setting.ExitCode);
        }

        await console.StartAgainAsync();
        return console;
    }

    /// <summary>Starts it on what is there.</summary>
    public async Task StartAgainAsync()
    {
        string[] words = [Program, "serve", "--data", _folder, "--urls", Address, "--stations", $"{_lanes}"];
        _process = Process.Start(new ProcessStartInfo("dotnet", words) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        var line = await _process.StandardOutput.ReadLineAsync().WaitAsync(Patience);
        Assert.True(line?.Contains(Address, StringComparison.Ordinal), $"the program said: {line}");
    }

    /// <summary>SIGKILL: the process gets no chance to tidy up.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync().WaitAsync(Patience);
        _process.Dispose();
        _process = null;
    }

    /// <summary>An answer of the API.</summary>
    public Task<string> GetAsync(string path) => _http.GetStringAsync(new Uri(path, UriKind.Relative));

    /// <summary>Asks the API for something that must be granted.</summary>
    public async Task PostAsync(string path, string json)
    {
        using var body = new StringContent(json, System.Text.Encoding.UTF8, "application/json");
        using var answer = await _http.PostAsync(new Uri(path, UriKind.Relative), body);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
        {
            await KillAsync();
        }

        _http.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
