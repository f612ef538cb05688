using System.CommandLine;
using System.CommandLine.Parsing;
using AimTrainer.Output;
using AimTrainer.Reports;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>One page that a coach hands to a bowler.</summary>
internal static class ReportCommand
{
    public static Command Create(UserConsole console)
    {
        var bowler = new Argument<string>("bowler") { Description = "The bowler's name.", HelpName = "BOWLER" };
        var from = TrendCommand.Day("--from", "Sessions from this day on (UTC).");
        var to = TrendCommand.Day("--to", "Sessions up to and with this day (UTC).");
        var format = Format();
        var output = new Option<string?>("--out") { Description = "Where to write the report; an existing file is replaced.", HelpName = "FILE" };
        var json = CommonOptions.Json();
        var command = new Command("report", "One page for a bowler: what was worked on, where the shots went, why, and what to work on next (docs/reports.md).")
        {
            bowler, from, to, format, output, json,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var (name, file, printed) = (parsed.GetValue(bowler)!, parsed.GetValue(output), parsed.GetValue(json));
            if (printed == file is not null)
            {
                throw new UserException("report: name a file with --out, or print the figures with --json, one of the two");
            }

            if (printed && parsed.GetValue(format) is not (null or ReportFormat.Json))
            {
                throw new UserException("--json: prints the figures as JSON; another --format needs --out");
            }

            var filter = TrendCommand.Filter(name, parsed.GetValue(from), parsed.GetValue(to));
            var written = printed ? ReportFormat.Json : parsed.GetValue(format) ?? ReportOutput.FormatOf(file!);
            using var store = StoreForReading.Open(parsed);
            var report = await new ReportReader(store, TimeProvider.System).ReadAsync(filter, cancellationToken).ConfigureAwait(false)
                ?? throw new UserException($"{name}: no session of this bowler is stored here; see: aimtrainer sessions list");
            if (printed)
            {
                using var standard = console.OpenOut();
                ReportWriter.Write(report, ReportFormat.Json, standard);
                return ExitCodes.Ok;
            }

            ReportOutput.Write(report, written, file!);
            ReportOutput.Say(console, report, file!);
            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>As what a report is written.</summary>
    internal static Option<ReportFormat?> Format() => new("--format")
    {
        Description = "html, pdf, png, csv or json; without it the ending of the file says.",
        HelpName = "html|pdf|png|csv|json",
        CustomParser = Parse,
    };

    private static ReportFormat? Parse(ArgumentResult result)
    {
        if (ReportOutput.Named(result.Tokens[0].Value) is { } format)
        {
            return format;
        }

        result.AddError($"--format: found {result.Tokens[0].Value}; allowed: html, pdf, png, csv, json");
        return null;
    }
}
