using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Writes a stored session as a document for other programs: the same from the command line and over HTTP.</summary>
public interface ISessionDocuments
{
    /// <summary>The whole session as one JSON document; its shape is in <c>docs/json.md</c>.</summary>
    string Json(SessionSetup setup, DrillScript drill, SessionRecord record);

    /// <summary>The shots that count as CSV; its columns are in <c>docs/shots.md</c>. No cell is a formula to a spreadsheet.</summary>
    string ShotsAsCsv(SessionSetup setup, SessionRecord record);
}
