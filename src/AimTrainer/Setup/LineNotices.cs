using AimTrainer.Feeds;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Setup;

/// <summary>Puts what happens on the line feed into the log.</summary>
internal sealed partial class LineNotices(ILogger<LineFeed> log)
{
    public void Say(string notice) => Say(log, notice);

    [LoggerMessage(LogLevel.Information, "{Notice}")]
    private static partial void Say(ILogger log, string notice);
}
