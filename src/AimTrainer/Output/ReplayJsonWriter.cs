using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>Writes a replay as it happens, so that a million shots need no more memory than one block's figures.</summary>
internal sealed class ReplayJsonWriter : IDisposable
{
    private const int FlushAt = 1 << 16;

    private readonly Utf8JsonWriter _writer;
    private BlockSummaryAccumulator _summary = new();

    public ReplayJsonWriter(Stream output, string drillId, Hand hand)
    {
        _writer = new Utf8JsonWriter(output, Json.Long);
        _writer.WriteStartObject();
        _writer.WriteString("drill"u8, drillId);
        _writer.WriteString("hand"u8, hand == Hand.Right ? "right"u8 : "left"u8);
        _writer.WriteStartArray("blocks"u8);
    }

    public void Add(ValueList<SessionEvent> events)
    {
        foreach (var happened in events)
        {
            Add(happened);
        }
    }

    private void Add(SessionEvent happened)
    {
        switch (happened)
        {
            case SessionEvent.BlockBegan began:
                _summary = new BlockSummaryAccumulator();
                _writer.WriteStartObject();
                _writer.WriteString("name"u8, began.Name);
                _writer.WriteString("kind"u8, Json.Word(began.BlockKind));
                _writer.WriteStartArray("shots"u8);
                break;
            case SessionEvent.ShotGraded graded:
                SessionJson.WriteShot(_writer, graded.Shot, graded.Shot.Shot.Time, graded.NextWidths);
                _summary.Add(graded.Shot.Targets);
                if (_writer.BytesPending > FlushAt)
                {
                    _writer.Flush();
                }

                break;
            case SessionEvent.BlockEnded ended:
                _writer.WriteEndArray();
                _writer.WriteString("ended"u8, Json.Word(ended.Why));
                SessionJson.WriteSummary(_writer, _summary.Result, ended.Thresholds);
                _writer.WriteEndObject();
                break;
            default:
                break;
        }
    }

    public void Finish(ReplayOutcome outcome)
    {
        _writer.WriteEndArray();
        _writer.WriteBoolean("complete"u8, outcome.Complete);
        _writer.WriteNumber("shots"u8, outcome.Shots);
        _writer.WriteNumber("repeatedShots"u8, outcome.Repeated);
        _writer.WriteNumber("shotsAfterTheEnd"u8, outcome.AfterTheEnd);
        _writer.WriteEndObject();
        _writer.Flush();
    }

    public void Dispose() => _writer.Dispose();
}
