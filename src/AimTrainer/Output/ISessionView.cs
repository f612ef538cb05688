using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>Shows a running session on standard output.</summary>
internal interface ISessionView
{
    /// <summary>The session is set up, or gone on with.</summary>
    void Opened(SessionSetup setup, DrillScript drill, SessionSnapshot now, bool goesOn);

    /// <summary>A step was kept.</summary>
    void Kept(LogEntry entry, SessionSnapshot now);

    /// <summary>Something the person should know: a bad row, a refusal.</summary>
    void Notice(string text);

    /// <summary>The session's record.</summary>
    /// <param name="setup">The session.</param>
    /// <param name="drill">Its drill.</param>
    /// <param name="record">What was thrown.</param>
    /// <param name="recordFile">Where the record is kept; null where it is of no interest.</param>
    void Summary(SessionSetup setup, DrillScript drill, SessionRecord record, string? recordFile);
}
