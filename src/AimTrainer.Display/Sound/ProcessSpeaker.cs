using System.ComponentModel;
using System.Diagnostics;
using System.Threading.Channels;

namespace AimTrainer.Display;

/// <summary>
/// Speaks through a program of the system, one process for each saying. A new saying ends the one before it; of sayings that wait
/// the newest is kept. What is wrong with the program is said once, then there is silence.
/// </summary>
public sealed class ProcessSpeaker : ISpeaker
{
    private readonly SpeechProgram _program;
    private readonly Action<string> _notice;
    private readonly TimeProvider _clock;
    private readonly CancellationTokenSource _stop = new();
    private readonly Channel<Saying> _sayings = Channel.CreateBounded<Saying>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
    private readonly Task _speaking;
    private int _disposed;

    /// <summary>Makes a speaker.</summary>
    /// <param name="program">The program.</param>
    /// <param name="notice">Told once when the program cannot speak.</param>
    /// <param name="clock">The time.</param>
    public ProcessSpeaker(SpeechProgram program, Action<string> notice, TimeProvider clock)
    {
        (_program, _notice, _clock) = (program, notice, clock);
        _speaking = Task.Run(SpeakAsync);
    }

    /// <inheritdoc/>
    public void Say(string words, TimeSpan after) => _sayings.Writer.TryWrite(new Saying(words, after));

    /// <inheritdoc/>
    public void Hush() => _sayings.Writer.TryWrite(new Saying(null, TimeSpan.Zero));

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken)
    {
        _sayings.Writer.TryComplete();
        return _speaking.WaitAsync(cancellationToken);
    }

    /// <summary>Ends what is said, and the speaker.</summary>
    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _disposed, 1) != 0)
        {
            return;
        }

        _sayings.Writer.TryComplete();
        await _stop.CancelAsync().ConfigureAwait(false);
        await _speaking.ConfigureAwait(false);
        _stop.Dispose();
    }

    private async Task SpeakAsync()
    {
        try
        {
            while (await _sayings.Reader.WaitToReadAsync(_stop.Token).ConfigureAwait(false))
            {
                if (_sayings.Reader.TryRead(out var saying) && saying.Words is { } words && await IsStillWantedAsync(saying.After).ConfigureAwait(false)
                    && await SayAsync(words).ConfigureAwait(false) is { } problem)
                {
                    _notice(problem);
                    return;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // Disposed of.
        }
    }

    /// <summary>Waits, unless something newer comes first.</summary>
    private async Task<bool> IsStillWantedAsync(TimeSpan after)
    {
        if (after > TimeSpan.Zero)
        {
            using var leave = CancellationTokenSource.CreateLinkedTokenSource(_stop.Token);
            await Task.WhenAny(NewerAsync(leave.Token), Task.Delay(after, _clock, leave.Token)).ConfigureAwait(false);
            await leave.CancelAsync().ConfigureAwait(false);
            _stop.Token.ThrowIfCancellationRequested();
        }

        return _sayings.Reader.Count == 0;
    }

    /// <summary>Runs the program until it ends or something newer comes.</summary>
    /// <returns>What is wrong with the program, or null.</returns>
    private async Task<string?> SayAsync(string words)
    {
        using var process = new Process { StartInfo = Start(words) };
        try
        {
            process.Start();
        }
        catch (Win32Exception exception)
        {
            return $"{_program.File} cannot be started ({exception.Message}): install it, or leave --speak out; the cues go on without words";
        }

        // Read and thrown away, so that it never waits for us.
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        using var leave = CancellationTokenSource.CreateLinkedTokenSource(_stop.Token);
        try
        {
            await GiveWordsAsync(process, words).ConfigureAwait(false);
            var ended = process.WaitForExitAsync(leave.Token);
            await Task.WhenAny(ended, NewerAsync(leave.Token)).ConfigureAwait(false);
            return ended.IsCompletedSuccessfully && process.ExitCode != 0
                ? $"{_program.File} could not speak (it ended with code {process.ExitCode}): try it by itself, or leave --speak out; the cues go on without words"
                : null;
        }
        finally
        {
            await leave.CancelAsync().ConfigureAwait(false);
            End(process);
        }
    }

    /// <summary>Completes when something newer is asked for; when nothing more can be, it never does by itself.</summary>
    private async Task NewerAsync(CancellationToken cancellationToken)
    {
        if (!await _sayings.Reader.WaitToReadAsync(cancellationToken).ConfigureAwait(false))
        {
            await Task.Delay(Timeout.InfiniteTimeSpan, _clock, cancellationToken).ConfigureAwait(false);
        }
    }

    private async Task GiveWordsAsync(Process process, string words)
    {
        try
        {
            if (_program.WordsOnInput)
            {
                await process.StandardInput.WriteAsync(words.AsMemory(), _stop.Token).ConfigureAwait(false);
            }

            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended before it read: its exit code tells.
        }
    }

    private ProcessStartInfo Start(string words)
    {
        var start = new ProcessStartInfo(_program.File)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            CreateNoWindow = true,
        };
        foreach (var argument in _program.Arguments)
        {
            start.ArgumentList.Add(argument);
        }

        if (!_program.WordsOnInput)
        {
            start.ArgumentList.Add(words);
        }

        return start;
    }

    private static void End(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (Exception exception) when (exception is InvalidOperationException or Win32Exception or AggregateException)
        {
            // It has ended by itself.
        }
    }

    private readonly record struct Saying(string? Words, TimeSpan After);
}
