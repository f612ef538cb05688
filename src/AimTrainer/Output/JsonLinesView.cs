using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>A running session for machines: one JSON object a line, written when the step is on disk.</summary>
internal sealed class JsonLinesView(UserConsole console) : ISessionView
{
    public void Opened(SessionSetup setup, DrillScript drill, SessionSnapshot now, bool goesOn) =>
        Line(new { opened = setup.SessionId, drill = drill.Id, bowler = setup.Bowler, hand = setup.Hand, setup.Simulated, goesOn });

    public void Kept(LogEntry entry, SessionSnapshot now) => Line(new { kept = entry.Sequence, events = entry.Events });

    public void Notice(string text) => Line(new { notice = text });

    public void Summary(SessionSetup setup, DrillScript drill, SessionRecord record, string? recordFile) =>
        console.Out.WriteLine(RecordJson.Of(setup, drill, record, recordFile, indented: false));

    private void Line<T>(T message)
    {
        console.Out.WriteLine(JsonSerializer.Serialize(message, Json.Lines));
        console.Out.Flush();
    }
}
