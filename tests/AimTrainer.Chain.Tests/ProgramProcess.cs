using System.Collections.Concurrent;
using System.Diagnostics;
using System.Reflection;

namespace AimTrainer.Chain.Tests;

/// <summary>The built program, running in a process of its own.</summary>
internal sealed class ProgramProcess : IDisposable
{
    // Only so that a program that hangs fails the test instead of holding up everything; far above what anything takes.
    private static readonly TimeSpan _patience = TimeSpan.FromMinutes(5);

    private static readonly string _file = typeof(ProgramProcess).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(metadata => metadata.Key == "Program").Value!;

    /// <summary>How a host says where it listens.</summary>
    private static readonly string[] _openings = ["The console is at ", "Centers send to "];

    private readonly Process _process;
    private readonly ConcurrentQueue<string> _said = new();
    private readonly TaskCompletionSource<Uri> _address = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _reading;

    private ProgramProcess(Process process)
    {
        _process = process;
        _process.StandardInput.Close();
        _reading = Task.WhenAll(ReadAsync(process.StandardOutput), ReadAsync(process.StandardError));
    }

    /// <summary>What it has said so far.</summary>
    public string Said => string.Join('\n', _said);

    /// <summary>Starts it with nobody at its terminal.</summary>
    /// <param name="database">The chain's database as its setting names it; null for none.</param>
    /// <param name="arguments">Its command line.</param>
    public static ProgramProcess Start(string? database, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [_file, .. arguments]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["AIMTRAINER_CHAIN"] = database ?? "";

        // Lives are short: what the runtime would measure for later is never used.
        start.Environment["DOTNET_TieredPGO"] = "0";
        return new ProgramProcess(Process.Start(start)!);
    }

    /// <summary>Where it listens, once it has said so.</summary>
    public async Task<Uri> AddressAsync(CancellationToken cancellationToken)
    {
        if (await Task.WhenAny(_address.Task, _reading).WaitAsync(_patience, cancellationToken) != _address.Task)
        {
            throw new InvalidOperationException($"the program ended and named no address: {Said}");
        }

        return await _address.Task;
    }

    /// <summary>SIGKILL: it gets no chance to tidy up. Returns when it is gone, and its locks with it.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await EndAsync();
    }

    /// <summary>Waits for its end.</summary>
    /// <returns>Its exit code.</returns>
    public async Task<int> EndAsync()
    {
        await _process.WaitForExitAsync().WaitAsync(_patience);
        await _reading;
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
    }

    private async Task ReadAsync(StreamReader reader)
    {
        while (await reader.ReadLineAsync() is { } line)
        {
            _said.Enqueue(line);
            if (Array.Find(_openings, opening => line.StartsWith(opening, StringComparison.Ordinal)) is { } found)
            {
                _address.TrySetResult(new Uri(line[found.Length..].Split(' ')[0]));
            }
        }
    }
}
