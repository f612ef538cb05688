using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web.Tests;

/// <summary>Keeps every line of the log.</summary>
internal sealed class LogLines : ILoggerProvider
{
    private readonly ConcurrentQueue<string> _lines = new();

    public string All => string.Join('\n', _lines);

    /// <summary>The lines of a level and worse, without scopes, as a console writes them.</summary>
    public string At(LogLevel least) => string.Join('\n', _lines.Where(line => Enum.TryParse<LogLevel>(line.Split(' ')[0], out var level) && level >= least));

    public ILogger CreateLogger(string categoryName) => new Logger(categoryName, _lines);

    public void Dispose()
    {
        // Nothing is held.
    }

    private sealed class Logger(string name, ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull
        {
            lines.Enqueue($"{name} scope {state}");
            return null;
        }

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            lines.Enqueue($"{logLevel} {name} {formatter(state, exception)} {exception}");
    }
}
