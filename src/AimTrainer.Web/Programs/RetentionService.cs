using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web;

/// <summary>Erases, once a day, the sessions that are older than what was set; nothing while nothing is set.</summary>
public sealed partial class RetentionService(PeopleRegister people, TimeProvider clock, ILogger<RetentionService> log, IRecordErasure? record = null) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromDays(1);

    /// <summary>Looks once.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        try
        {
            if (record is not null && people.All.KeepMonths is { } months)
            {
                var erased = await record.EraseBeforeAsync(clock.GetUtcNow().AddMonths(-months), cancellationToken).ConfigureAwait(false);
                if (erased.Sessions.Count > 0)
                {
                    SayErased(log, erased.Sessions.Count, months, erased.Id);
                }
            }
        }
        catch (StoreUnavailableException exception)
        {
            SayNotErased(log, exception.Message);
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, clock);
        do
        {
            await LookAsync(stoppingToken).ConfigureAwait(false);
        }
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false));
    }

    [LoggerMessage(LogLevel.Warning, "{Count} sessions older than {Months} months were erased (erasure {Id})")]
    private static partial void SayErased(ILogger log, int count, int months, string id);

    [LoggerMessage(LogLevel.Error, "sessions past their time were not erased; tried again tomorrow: {Why}")]
    private static partial void SayNotErased(ILogger log, string why);
}
