using AimTrainer.Sessions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web;

/// <summary>
/// Erases, once a day, the sessions that are older than what was set; nothing while nothing is set. At the start, before a lane goes on,
/// and once a day it also sees to erasures that were not finished, or came back with a copy of the record.
/// </summary>
public sealed partial class RetentionService(PeopleRegister people, TimeProvider clock, ILogger<RetentionService> log, IRecordErasure? record = null) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromDays(1);

    /// <summary>Looks once.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        try
        {
            if (record is not null && people.All.KeepMonths is { } months
                && await record.EraseBeforeAsync(clock.GetUtcNow().AddMonths(-months), cancellationToken).ConfigureAwait(false) is { } erased)
            {
                SayErased(log, erased.Sessions.Count, months, erased.Id);
            }
        }
        catch (StoreUnavailableException exception)
        {
            SayNotErased(log, exception.Message);
        }
    }

    /// <inheritdoc/>
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        await EraseAgainAsync(cancellationToken).ConfigureAwait(false);
        await base.StartAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, clock);
        await LookAsync(stoppingToken).ConfigureAwait(false);
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false))
        {
            await EraseAgainAsync(stoppingToken).ConfigureAwait(false);
            await LookAsync(stoppingToken).ConfigureAwait(false);
        }
    }

    private async Task EraseAgainAsync(CancellationToken cancellationToken)
    {
        try
        {
            if (record is not null && await record.EraseAgainAsync(cancellationToken).ConfigureAwait(false) is > 0 and var again)
            {
                SayErasedAgain(log, again);
            }
        }
        catch (StoreUnavailableException exception)
        {
            SayNotErasedAgain(log, exception.Message);
        }
    }

    [LoggerMessage(LogLevel.Warning, "{Count} sessions older than {Months} months were erased (erasure {Id})")]
    private static partial void SayErased(ILogger log, int count, int months, string id);

    [LoggerMessage(LogLevel.Warning, "{Count} sessions that had been erased were in the record again, and were erased again")]
    private static partial void SayErasedAgain(ILogger log, int count);

    [LoggerMessage(LogLevel.Error, "what was erased before was not seen to again; tried again tomorrow: {Why}")]
    private static partial void SayNotErasedAgain(ILogger log, string why);

    [LoggerMessage(LogLevel.Error, "sessions past their time were not erased; tried again tomorrow: {Why}")]
    private static partial void SayNotErased(ILogger log, string why);
}
