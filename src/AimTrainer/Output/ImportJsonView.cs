using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>An import for machines: the session's record as one document when it is done, what was odd on the error output.</summary>
internal sealed class ImportJsonView(UserConsole console) : ISessionView
{
    public void Opened(SessionSetup setup, DrillScript drill, SessionSnapshot now, bool goesOn)
    {
    }

    public void Kept(LogEntry entry, SessionSnapshot now)
    {
    }

    public void Notice(string text) => console.Error.WriteLine(text);

    public void Summary(SessionSetup setup, DrillScript drill, SessionRecord record, string? recordFile) =>
        console.Out.WriteLine(RecordJson.Of(setup, drill, record, recordFile, indented: true));
}
