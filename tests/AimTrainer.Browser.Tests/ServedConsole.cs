using System.Diagnostics;
using System.Net;
using System.Net.NetworkInformation;
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
    private readonly string _urls;
    private readonly HttpClient _http;
    private Process? _process;

    private ServedConsole(int lanes, bool network)
    {
        _lanes = lanes;
        var port = FreePort();
        (_urls, Address) = network ? ($"http://0.0.0.0:{port}", $"http://{OwnAddress()}:{port}") : ($"http://127.0.0.1:{port}", $"http://127.0.0.1:{port}");
        _http = new HttpClient { BaseAddress = new Uri(Address) };
    }

    /// <summary>Where browsers reach it.</summary>
    public string Address { get; }

    /// <summary>Its data folder.</summary>
    public string Folder => _folder;

    /// <summary>Starts one with an empty data folder, for this machine.</summary>
    /// <param name="lanes">How many.</param>
    /// <param name="passphrase">The coach's, set before the start; null for none.</param>
    public static async Task<ServedConsole> StartAsync(int lanes = 1, string? passphrase = null)
    {
        var console = new ServedConsole(lanes, network: false);
        await console.SetAsync(passphrase);
        await console.StartAgainAsync();
        return console;
    }

    /// <summary>Starts one for the network, with a coach's passphrase.</summary>
    public static async Task<ServedConsole> OnNetworkAsync(string passphrase, int lanes = 2)
    {
        var console = new ServedConsole(lanes, network: true);
        await console.SetAsync(passphrase);
        await console.StartAgainAsync();
        return console;
    }

    private async Task SetAsync(string? passphrase)
    {
        if (passphrase is null)
        {
            return;
        }

        using var setting = Run("passphrase");
        await setting.StandardInput.WriteLineAsync(passphrase);
        setting.StandardInput.Close();
        await setting.WaitForExitAsync().WaitAsync(Patience);
        Assert.Equal(0, setting.ExitCode);
    }

    /// <summary>Another command of the program, on the same data folder.</summary>
    public Process Run(params string[] words) => RunOn(null, words);

    /// <summary>The same on a display.</summary>
    public Process RunOn(string? display, params string[] words)
    {
        var start = new ProcessStartInfo("dotnet", [Program, .. words, "--data", _folder])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (display is not null)
        {
            start.Environment["DISPLAY"] = display;
        }

        return Process.Start(start)!;
    }

    /// <summary>Starts it on what is there.</summary>
    /// <param name="more">More options of <c>serve</c>.</param>
    public async Task StartAgainAsync(params string[] more)
    {
        string[] words = [Program, "serve", "--data", _folder, "--urls", _urls, "--stations", $"{_lanes}", .. more];
        _process = Process.Start(new ProcessStartInfo("dotnet", words) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        var line = await _process.StandardOutput.ReadLineAsync().WaitAsync(Patience);
        Assert.True(line?.Contains(_urls, StringComparison.Ordinal), $"the program said: {line}");
    }

    /// <summary>Runs another command on the same data folder; the console must not be running.</summary>
    public async Task RunAsync(params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Program, .. words, "--data", _folder]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        await process.StandardOutput.ReadToEndAsync().WaitAsync(Patience);
        await process.WaitForExitAsync().WaitAsync(Patience);
        Assert.True(process.ExitCode == 0, await error);
    }

    /// <summary>A file beside the record.</summary>
    public string File(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        System.IO.File.WriteAllText(path, text);
        return path;
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

    /// <summary>Puts something that must be taken.</summary>
    public async Task PutAsync(string path, string json)
    {
        using var body = new StringContent(json, System.Text.Encoding.UTF8, "application/json");
        using var answer = await _http.PutAsync(new Uri(path, UriKind.Relative), body);
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

    /// <summary>This machine's address on a network; where it has none its own loopback, bound to every address all the same.</summary>
    private static IPAddress OwnAddress() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(one => one.OperationalStatus == OperationalStatus.Up && one.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(one => one.GetIPProperties().UnicastAddresses).Select(one => one.Address)
        .FirstOrDefault(address => address.AddressFamily == AddressFamily.InterNetwork) ?? IPAddress.Loopback;

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
