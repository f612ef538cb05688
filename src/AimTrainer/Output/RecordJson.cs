using System.Text;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>A whole session as JSON: the shape of a replay with who, when and what happened beside it.</summary>
internal static class RecordJson
{
    /// <summary>The document as text.</summary>
    /// <param name="setup">The session.</param>
    /// <param name="drill">Its drill.</param>
    /// <param name="record">What was thrown.</param>
    /// <param name="recordFile">Where the record is kept, when that is to be said.</param>
    /// <param name="indented">For people to read, or on one line.</param>
    public static string Of(
        SessionSetup setup, DrillScript drill, SessionRecord record, string? recordFile, bool indented)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Json.Indented with { Indented = indented }))
        {
            Write(writer, setup, drill, record, recordFile);
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void Write(
        Utf8JsonWriter writer, SessionSetup setup, DrillScript drill, SessionRecord record, string? recordFile)
    {
        writer.WriteStartObject();
        writer.WriteString("session"u8, setup.SessionId);
        writer.WriteString("startedAt"u8, setup.At);
        writer.WriteNumber("station"u8, setup.Station);
        writer.WriteString("bowler"u8, setup.Bowler);
        writer.WriteBoolean("simulated"u8, setup.Simulated);
        writer.WriteString("drill"u8, drill.Id);
        writer.WriteString("drillName"u8, drill.Name);
        writer.WriteString("drillHash"u8, setup.DrillHash);
        writer.WriteString("hand"u8, Words.Of(setup.Hand));
        writer.WriteString("ball"u8, setup.Ball);
        if (setup.Balls.Count > 0)
        {
            writer.WriteStartArray("balls"u8);
            foreach (var ball in setup.Balls)
            {
                writer.WriteStartObject();
                writer.WriteString("role"u8, ball.Role);
                writer.WriteString("name"u8, ball.Name);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        }

        writer.WriteStartArray("blocks"u8);
        foreach (var block in record.Blocks)
        {
            WriteBlock(writer, block);
        }

        writer.WriteEndArray();
        writer.WriteNumber("shotsSetAside"u8, record.SetAside.Count);
        writer.WriteStartArray("notes"u8);
        foreach (var note in record.Notes)
        {
            writer.WriteStringValue(note);
        }

        writer.WriteEndArray();
        writer.WriteString("ended"u8, record.EndedWhy);
        if (recordFile is not null)
        {
            writer.WriteString("recordFile"u8, recordFile);
        }

        writer.WriteEndObject();
    }

    private static void WriteBlock(Utf8JsonWriter writer, BlockRecord block)
    {
        writer.WriteStartObject();
        writer.WriteString("name"u8, block.Began.Name);
        writer.WriteString("kind"u8, Json.Word(block.Began.BlockKind));
        writer.WriteNumber("attempt"u8, block.Began.Attempt);
        writer.WriteStartArray("shots"u8);
        foreach (var shot in block.Shots)
        {
            SessionJson.WriteShot(writer, shot.Shot, shot.Shot.ThrownAt(), shot.NextWidths, shot.AsFirstGraded);
        }

        writer.WriteEndArray();
        writer.WriteString("ended"u8, block.Ended is { } ended ? Json.Word(ended.Why) : null);
        SessionJson.WriteSummary(writer, block.Summary, block.Ended?.Thresholds ?? []);
        writer.WriteEndObject();
    }
}
