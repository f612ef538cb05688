using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>A running session for machines: one JSON object a line, written when the step is on disk.</summary>
internal sealed class JsonLinesView : ISessionView
{
    public void Opened(SessionSetup setup, DrillScript drill, bool goesOn) =>
        Line(new { opened = setup.SessionId, drill = drill.Id, bowler = setup.Bowler, hand = setup.Hand, setup.Simulated, goesOn });

    public void Kept(LogEntry entry, SessionSnapshot now) => Line(new { kept = entry.Sequence, events = entry.Events });

    public void Notice(string text) => Line(new { notice = text });

    public void Summary(SessionSetup setup, DrillScript drill, SessionRecord record, string? where)
    {
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer))
        {
            RecordJson.Write(writer, setup, drill, record, where);
        }

        Console.Out.WriteLine(System.Text.Encoding.UTF8.GetString(buffer.ToArray()));
    }

    private static void Line<T>(T message)
    {
        Console.Out.WriteLine(JsonSerializer.Serialize(message, Json.Lines));
        Console.Out.Flush();
    }
}
