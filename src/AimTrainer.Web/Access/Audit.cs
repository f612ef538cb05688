using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web;

/// <summary>
/// Who did what, when and from where: a JSON object a line in <c>audit.jsonl</c>. At 4 MiB the file becomes <c>audit.1.jsonl</c>, that
/// one <c>audit.2.jsonl</c>, and so on; the eighth goes. Nothing in it is a secret.
/// </summary>
internal sealed partial class Audit(string dataFolder, TimeProvider clock, ILogger<Audit> log) : IDisposable
{
    private const int Kept = 8;

    private static readonly JsonSerializerOptions Options = new(WebJson.Options) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    private readonly string _file = Path.Combine(dataFolder, "audit.jsonl");
    private readonly Tries _refused = new(5, 60, clock);
    private readonly Lock _lock = new();
    private FileStream? _stream;

    /// <summary>At how many bytes the file is put aside.</summary>
    internal int TurnAt { get; init; } = 4 << 20;

    /// <summary>Writes a line. That it cannot be written is logged and undoes nothing: what it tells of has been done.</summary>
    public void Write(AuditLine line)
    {
        var bytes = JsonSerializer.SerializeToUtf8Bytes(line with { At = clock.GetUtcNow() }, Options);
        lock (_lock)
        {
            try
            {
                if (_stream is { } full && full.Length + bytes.Length >= TurnAt)
                {
                    Turn();
                }

                _stream ??= Open();
                _stream.Write([.. bytes, (byte)'\n']);
                _stream.Flush();
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                SayNotWritten(log, _file, exception.Message);
            }
        }
    }

    /// <summary>Writes a line of somebody who was not let in: at most five a minute from an address, so that nobody can push the others out.</summary>
    public void WriteRefused(AuditLine line)
    {
        if (_refused.Refuse(line.From ?? "") is null)
        {
            Write(line);
        }
    }

    public void Dispose() => _stream?.Dispose();

    private void Turn()
    {
        _stream?.Dispose();
        _stream = null;
        for (var i = Kept - 1; i >= 1; i--)
        {
            var from = i == 1 ? _file : Aside(i - 1);
            if (File.Exists(from))
            {
                File.Move(from, Aside(i), overwrite: true);
            }
        }
    }

    private string Aside(int number) => Path.Combine(dataFolder, $"audit.{number}.jsonl");

    private FileStream Open()
    {
        var options = new FileStreamOptions { Mode = FileMode.Append, Access = FileAccess.Write, Share = FileShare.ReadWrite | FileShare.Delete };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return new FileStream(_file, options);
    }

    [LoggerMessage(LogLevel.Error, "{File}: a line of the audit could not be written: {Why}")]
    private static partial void SayNotWritten(ILogger log, string file, string why);
}
