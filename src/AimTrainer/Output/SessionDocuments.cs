using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>Sessions as documents: the same for <c>sessions export</c> and over HTTP.</summary>
internal sealed class SessionDocuments : ISessionDocuments
{
    private const string SimulatedMark = "simulated shot";

    /// <inheritdoc/>
    public string Json(SessionSetup setup, DrillScript drill, SessionRecord record) => RecordJson.Of(setup, drill, record, null, indented: true);

    /// <inheritdoc/>
    public string ShotsAsCsv(SessionSetup setup, SessionRecord record)
    {
        var shots = record.Blocks.AsEnumerable().SelectMany(block => block.Shots).Where(shot => shot.Shot.VoidReason is null).Select(shot => AsExported(shot.Shot));
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        CsvShotWriter.Write(text, shots, setup.Bowler, setup.Hand);
        return text.ToString();
    }

    /// <summary>With the time it came in, and so that an invented shot says so wherever the file goes.</summary>
    private static Shot AsExported(GradedShot shot) => shot.Shot with
    {
        Time = shot.ThrownAt(),
        Note = shot.Shot.Source != ShotSource.Simulated ? shot.Shot.Note
            : shot.Shot.Note is { } note ? $"{SimulatedMark}; {note}" : SimulatedMark,
    };
}
