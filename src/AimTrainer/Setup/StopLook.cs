using AimTrainer.Display;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Makes the windows of this process dark while projection is stopped in a data folder, whichever program stopped it.</summary>
/// <param name="dataFolder">The folder.</param>
/// <param name="darkness">The windows' darkness.</param>
/// <param name="clock">The time.</param>
internal sealed class StopLook(string dataFolder, Darkness darkness, TimeProvider clock)
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    private readonly ProjectionStopFile _file = new(dataFolder);
    private DateTime _writtenAt = DateTime.MinValue;

    /// <summary>Looks once.</summary>
    public void Look()
    {
        var writtenAt = _file.WrittenAt;
        if (writtenAt != _writtenAt)
        {
            _writtenAt = writtenAt;
            darkness.Set(_file.Read().Stopped ? new DarkReason.Stopped() : null);
        }
    }

    /// <summary>Looks until cancelled.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(LookEvery, clock);
        while (await timer.WaitForNextTickAsync(cancellationToken).ConfigureAwait(false))
        {
            Look();
        }
    }
}
