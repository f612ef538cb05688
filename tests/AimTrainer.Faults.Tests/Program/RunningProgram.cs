using System.Diagnostics;

namespace AimTrainer.Faults.Tests;

/// <summary>A run of the program that has not ended, or whose end nobody has looked at yet.</summary>
internal sealed class RunningProgram : IDisposable
{
    // Only so that a program that hangs fails the test instead of holding up everything; far above what anything takes.
    private static readonly TimeSpan _patience = TimeSpan.FromMinutes(2);

    private readonly Process _process;
    private readonly Task<string> _error;

    public RunningProgram(ProcessStartInfo start)
    {
        _process = Process.Start(start)!;
        _process.StandardInput.Close();
        _error = _process.StandardError.ReadToEndAsync();
    }

    /// <summary>The id of its process.</summary>
    public int Id => _process.Id;

    /// <summary>The next line of standard output, or null at its end.</summary>
    public async Task<string?> NextLineAsync(CancellationToken cancellationToken) =>
        await _process.StandardOutput.ReadLineAsync(cancellationToken).AsTask().WaitAsync(_patience, cancellationToken);

    /// <summary>Reads on until a line that fits.</summary>
    public async Task<string> LineAsync(Func<string, bool> fits, CancellationToken cancellationToken)
    {
        while (await NextLineAsync(cancellationToken) is { } line)
        {
            if (fits(line))
            {
                return line;
            }
        }

        throw new InvalidOperationException($"the program ended before the line that was waited for: {await _error}");
    }

    /// <summary>Reads on until a shot is acknowledged.</summary>
    public async Task<AcknowledgedStep> ShotAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var line = await LineAsync(line => AcknowledgedStep.TryParse(line) is not null, cancellationToken);
            if (AcknowledgedStep.TryParse(line)! is { ShotId: not null } step)
            {
                return step;
            }
        }
    }

    /// <summary>SIGKILL: the process gets no chance to tidy up.</summary>
    public void Kill() => _process.Kill();

    /// <summary>Kills it after a while; what it wrote before can still be read.</summary>
    public async Task KillAfterAsync(TimeSpan delay)
    {
        await Task.Delay(delay);
        Kill();
    }

    /// <summary>Waits for its end.</summary>
    /// <param name="read">The lines of standard output that were read already.</param>
    public async Task<Outcome> EndAsync(IReadOnlyList<string> read)
    {
        await _process.WaitForExitAsync().WaitAsync(_patience);
        return new Outcome(_process.ExitCode, read, await _error);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
    }
}
