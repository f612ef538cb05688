using AimTrainer.Reports;
using AimTrainer.Setup;

namespace AimTrainer.Output;

/// <summary>A comparison as a file, as JSON, or for the person at the terminal.</summary>
internal static class CompareRecord
{
    /// <summary>Writes it; says what it says.</summary>
    /// <param name="console">The terminal.</param>
    /// <param name="report">The comparison.</param>
    /// <param name="format">Of the file.</param>
    /// <param name="file">Where to; null prints.</param>
    /// <param name="json">Prints JSON instead of text.</param>
    public static void Run(UserConsole console, BallsReport report, ReportFormat format, string? file, bool json)
    {
        if (json)
        {
            using var standard = console.OpenOut();
            ReportWriter.Write(report, ReportFormat.Json, standard);
            return;
        }

        Say(console, report, file is null);
        if (file is not null)
        {
            using var whole = new MemoryStream();
            ReportWriter.Write(report, format, whole);
            using (var stream = UserFiles.Create(file))
            {
                whole.WriteTo(stream);
            }

            console.Out.WriteLine($"Report written: {file}");
        }
    }

    private static void Say(UserConsole console, BallsReport report, bool whole)
    {
        if (report.Simulated)
        {
            console.Out.WriteLine(BallsReport.SimulatedNotice);
        }

        var what = report.Sessions.Count > 0 ? $" in {Words.Count(report.Sessions.Count, "session")}" : "";
        console.Out.WriteLine($"{report.Bowler ?? report.File}: {BallsWords.Summary(report)[..^1]}{what}. Limits in brackets are 95 %.");
        foreach (var sentence in BallsWords.Answer(report.Comparison).Concat(BallsWords.More(report.Comparison)).Concat(report.Fits.AsEnumerable()))
        {
            console.Out.WriteLine($"- {sentence}");
        }

        foreach (var note in report.Notes.AsEnumerable().Concat(report.Comparison.Notices.AsEnumerable()))
        {
            console.Out.WriteLine($"Note: {note}.");
        }

        if (!whole)
        {
            return;
        }

        foreach (var one in report.Throws.AsEnumerable().Where(one => one.Reasons.Count > 0))
        {
            console.Out.WriteLine($"throw {one.Number}{(one.NumberInSession is { } place ? $" ({(one.SessionId is null ? "line" : "shot")} {place}"
                + $"{(one.SessionId is { } id ? $" of session {id}" : "")})" : "")}{(one.Ball is null ? "" : $", {one.Ball}")}: {BallsWords.Reasons(one)}");
        }
    }
}
