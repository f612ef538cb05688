using System.Diagnostics.CodeAnalysis;
using AimTrainer.Sessions;
using AimTrainer.Store;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Setup;

/// <summary>Sends a center's events to its chain while the center's host runs. Whatever happens to the line, the lanes know nothing of it.</summary>
internal sealed partial class ChainSender(CenterSync sync, TimeProvider clock, ILogger<ChainSender> log) : BackgroundService
{
    /// <summary>A chain is for reports, not for pictures: so late is soon enough.</summary>
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(5);

    /// <summary>The longest wait after failures, each of which doubles it.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    [SuppressMessage("Design", "CA1031:Do not catch general exception types", Justification = "Whatever it is, the lanes go on, and it is said.")]
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var (wait, said) = (Every, (string?)null);
        while (!stoppingToken.IsCancellationRequested)
        {
            string? error;
            try
            {
                error = (await sync.RunAsync(stoppingToken).ConfigureAwait(false)).Error;
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (StoreUnavailableException exception)
            {
                error = exception.Message;
            }
            catch (Exception exception)
            {
                error = $"sending to the chain failed, and is tried again: {exception.Message.TrimEnd('.')}";
            }

            if (error != said)
            {
                if (error is null)
                {
                    Well(log);
                }
                else
                {
                    Wrong(log, error);
                }
            }

            said = error;
            wait = error is null ? Every : wait * 2 < Longest ? wait * 2 : Longest;
            await Task.Delay(wait, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Words}")]
    private static partial void Wrong(ILogger logger, string words);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The chain is reached again; what waited is sent")]
    private static partial void Well(ILogger logger);
}
