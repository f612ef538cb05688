using AimTrainer.Reports;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Output;

/// <summary>Puts reports into files, and says on the terminal what is in them.</summary>
internal static class ReportOutput
{
    /// <summary>The format of a name such as "html"; null when there is none.</summary>
    public static ReportFormat? Named(string name) => name switch
    {
        "html" => ReportFormat.Html,
        "pdf" => ReportFormat.Pdf,
        "png" => ReportFormat.Png,
        "csv" => ReportFormat.Csv,
        "json" => ReportFormat.Json,
        _ => null,
    };

    /// <summary>The format by the ending of a file's name.</summary>
    /// <exception cref="UserException">The ending says none.</exception>
    public static ReportFormat FormatOf(string file) => Named(Path.GetExtension(file).TrimStart('.').ToLowerInvariant()) is { } format
        ? format
        : throw new UserException($"{file}: its ending names no format; end it in .html, .pdf, .png, .csv or .json, or give --format");

    /// <summary>Writes a report to a file, all of it or nothing.</summary>
    public static void Write(BowlerReport report, ReportFormat format, string file)
    {
        using var whole = new MemoryStream();
        ReportWriter.Write(report, format, whole);
        using var stream = UserFiles.Create(file);
        whole.WriteTo(stream);
    }

    /// <summary>Says what the report says.</summary>
    public static void Say(UserConsole console, BowlerReport report, string file)
    {
        if (report.Simulated)
        {
            console.Out.WriteLine(BowlerReport.SimulatedNotice);
        }

        foreach (var sentence in report.Sentences)
        {
            console.Out.WriteLine($"- {sentence.Text}");
        }

        console.Out.WriteLine($"- Work on next: {report.WorkOn.Text} Drill: {report.WorkOn.DrillName} ({DrillShelf.CommandOf(report.WorkOn.DrillId)}).");
        foreach (var missing in report.Missing)
        {
            console.Out.WriteLine($"- Missing: {missing}");
        }

        console.Out.WriteLine($"Report written: {file}");
    }
}
