using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Web;

/// <summary>
/// Hides all projection at once, until a coach releases it. What is in memory counts at once and first; then it is put on the disk, so
/// that a restart finds it. What another program of this machine does to the file is taken over within a tenth of a second.
/// </summary>
internal sealed class EmergencyStop : BackgroundService
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    private readonly ProjectionStopFile _file;
    private readonly Audit _audit;
    private readonly TimeProvider _clock;
    private readonly Lock _lock = new();
    private volatile ProjectionState _state;
    private DateTime _writtenAt;

    public EmergencyStop(string dataFolder, Audit audit, TimeProvider clock)
    {
        (_file, _audit, _clock) = (new ProjectionStopFile(dataFolder), audit, clock);
        _writtenAt = _file.WrittenAt;
        _state = _file.Read();
    }

    /// <summary>How it stands.</summary>
    public ProjectionState State => _state;

    /// <summary>Raised after every change.</summary>
    public ChangeSignal Changes { get; } = new();

    /// <summary>Hides everything. A stop that stands stays as it is.</summary>
    /// <returns>Null; or why a restart would not know of it.</returns>
    public string? Stop(string by) => _state.Stopped ? null : Change(ProjectionState.StoppedBy(by, _clock.GetUtcNow()));

    /// <summary>Shows everything again.</summary>
    /// <returns>Null; or why it could not be released: then it stands.</returns>
    public string? Release() => _state.Stopped ? Change(ProjectionState.Free) : null;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(LookEvery, _clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false))
            {
                Look();
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }

    /// <summary>Takes over what another program did to the file.</summary>
    internal void Look()
    {
        lock (_lock)
        {
            if (_file.WrittenAt == _writtenAt)
            {
                return;
            }

            _writtenAt = _file.WrittenAt;
            var read = _file.Read();
            if (read == _state)
            {
                return;
            }

            _state = read;
        }

        _audit.Write(new AuditLine(_state.Stopped ? "projection stop" : "projection release", 0, _state.By ?? "a program of this machine", null, "by the file in the data folder"));
        Changes.Raise();
    }

    private string? Change(ProjectionState state)
    {
        string? problem;
        lock (_lock)
        {
            // To hide must not wait for a disk; to show again must be on it, or a restart would hide again.
            if (state.Stopped)
            {
                _state = state;
                Changes.Raise();
            }

            problem = _file.Write(state);
            _writtenAt = _file.WrittenAt;
            if (!state.Stopped && problem is null)
            {
                _state = state;
                Changes.Raise();
            }
        }

        return problem;
    }
}
