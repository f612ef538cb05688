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
        var shots = record.Blocks.AsEnumerable().SelectMany(block => block.Shots).Select(shot => shot.Shot).Where(shot => shot.VoidReason is null).ToList();
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };

        // Of a comparison each shot says its line, so that compare reads the file as it is.
        CsvShotWriter.Write(text, shots.Select(AsExported), setup.Bowler, setup.Hand, [.. shots.Select(shot => shot.Compared is null ? null : shot.Aim)]);
        return text.ToString();
    }

    /// <summary>With the time it came in, and so that an invented shot says so wherever the file goes.</summary>
    private static Shot AsExported(GradedShot shot) => shot.Shot with
    {
        Time = shot.ThrownAt(),
        Ball = shot.Compared?.Ball ?? shot.Shot.Ball,
        Note = shot.Shot.Source != ShotSource.Simulated ? shot.Shot.Note
            : shot.Shot.Note is { } note ? $"{SimulatedMark}; {note}" : SimulatedMark,
    };
}
