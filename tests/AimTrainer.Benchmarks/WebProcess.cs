using System.Diagnostics;
using System.Globalization;

namespace AimTrainer.Benchmarks;

/// <summary>A server in a process of its own, so that its processor time and memory are its own.</summary>
internal sealed class WebProcess : IDisposable
{
    private readonly Process _process;

    private WebProcess(Process process, Uri address) => (_process, Address) = (process, address);

    public Uri Address { get; }

    /// <summary>Processor time that it has used.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Memory that it holds now, MiB.</summary>
    public double MemoryMiB
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1048576.0;
        }
    }

    /// <summary>Starts it and waits for the line that names its address.</summary>
    public static async Task<WebProcess> StartAsync(string assembly, params string[] args)
    {
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, assembly), .. args]) { RedirectStandardOutput = true })!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            var at = line.IndexOf("http://", StringComparison.Ordinal);
            if (at >= 0)
            {
                return new WebProcess(process, new Uri(line[at..].Split(' ')[0]));
            }
        }

        throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{assembly} ended with {process.ExitCode} and named no address"));
    }

    public void Dispose()
    {
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }
}
