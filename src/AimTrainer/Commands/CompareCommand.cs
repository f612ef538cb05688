using System.CommandLine;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Reports;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Compares balls that were thrown at the same target or line: of a file, or of the record. Nothing is stored.</summary>
internal static class CompareCommand
{
    public static Command Create(UserConsole console)
    {
        var shots = new Option<string?>("--shots")
        {
            Description = "A file: the shots in the order thrown, CSV with a ball column and perhaps a line column (docs/shots.md). Else the record is read.",
            HelpName = "FILE",
        };
        var session = new Option<string[]>("--session") { Description = "A session of the record; more than one when given again.", HelpName = "ID" };
        var balls = new Option<string?>("--balls")
        {
            Description = "Only these balls of the record, with commas between; the first is the reference unless --reference names one.",
            HelpName = "BALL,BALL",
        };
        var (from, to) = (TrendCommand.Day("--from", "Sessions of the record from this day on (UTC)."), TrendCommand.Day("--to", "Sessions of the record up to and with this day (UTC)."));
        var reference = CommonOptions.Name(
            "--reference", "The ball that the others are held against. Needed with --shots; of the record it is the ball that was thrown first, when not given.");
        reference.HelpName = "BALL";
        var targets = new Option<AnalyseTarget[]>("--target")
        {
            Description = "What all throws were aimed at, as BOARD@FEET (10@15); given more than once it is a line.",
            HelpName = "BOARD@FEET[xWIDTH]",
            CustomParser = AnalyseCommand.ParseTargets,
        };
        var (hand, lane, map, json) = (CommonOptions.Hand(), CommonOptions.Lane(), CommonOptions.Map(), CommonOptions.Json());
        var bowler = CommonOptions.Name("--bowler", "Whose: of the record the bowler's newest sessions; of a file only this bowler's shots, else those of the first one.");
        var boards = CommonOptions.Number("--margin", "A difference of boards up to here does not matter (0.5 when not given).", 0.05, 10, "BOARDS");
        var degrees = CommonOptions.Number("--margin-degrees", "The same for directions (0.5 when not given).", 0.05, 10, "DEGREES");
        var feet = CommonOptions.Number("--margin-feet", "The same for the distance of the breakpoint (1 when not given).", 0.1, 20, "FEET");
        var speed = CommonOptions.Number("--speed-within", "Only throws whose speed lies so near the usual one count.", 0.1, 20, "MPH");
        var revs = CommonOptions.Number("--revs-within", "Only throws whose rev rate lies so near the usual one count.", 1, 500, "RPM");
        var angle = CommonOptions.Number("--angle-within", "Only throws whose launch angle lies so near the line's (or the usual one) count.", 0.05, 10, "DEGREES");
        var laydown = CommonOptions.Number("--laydown-within", "Only throws laid down so near the line's start (or the usual place) count.", 0.1, 20, "BOARDS");
        var (format, output) = (ReportCommand.Format(), new Option<string?>("--out") { Description = "Write a report to this file; an existing file is replaced.", HelpName = "FILE" });
        var command = new Command("compare", "Compare two or more balls thrown at the same target or line, line by line (docs/comparison.md).")
        {
            session, bowler, balls, from, to, shots, reference, targets, hand, lane, map, boards, degrees, feet, speed, revs, angle, laydown, format, output, json,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var (file, written, printed) = (parsed.GetValue(shots), parsed.GetValue(output), parsed.GetValue(json));
            if (written is not null && printed)
            {
                throw new UserException("compare: write a file with --out, or print the figures with --json, one of the two");
            }

            if (written is null && parsed.GetValue(format) is not null)
            {
                throw new UserException("--format: is for a file; name it with --out");
            }

            var shape = written is null ? ReportFormat.Json : parsed.GetValue(format) ?? ReportOutput.FormatOf(written);
            var question = new BallsQuestion
            {
                Bowler = parsed.GetValue(bowler),
                SessionIds = (parsed.GetValue(session) ?? []).ToValueList(),
                Balls = (parsed.GetValue(balls) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToValueList(),
                Reference = parsed.GetValue(reference),
                Limits = Limits(parsed.GetValue(speed), parsed.GetValue(revs), parsed.GetValue(angle), parsed.GetValue(laydown)),
                Margins = new BallsMargins
                {
                    MarginBoards = parsed.GetValue(boards) ?? 0.5,
                    MarginDegrees = parsed.GetValue(degrees) ?? 0.5,
                    MarginFeet = parsed.GetValue(feet) ?? 1,
                },
            };
            if (file is null)
            {
                if (parsed.GetResult(targets) is not null || parsed.GetResult(hand) is not null || parsed.GetResult(lane) is not null || parsed.GetResult(map) is not null)
                {
                    throw new UserException("--target, --hand, --lane, --map: go with --shots; the record knows them");
                }

                var days = TrendCommand.Filter(question.Bowler ?? "", parsed.GetValue(from), parsed.GetValue(to));
                CompareRecord.Run(
                    console, await ReadAsync(question with { From = days.From, To = days.To }, parsed, cancellationToken).ConfigureAwait(false), shape, written, printed);
                return ExitCodes.Ok;
            }

            if (question.SessionIds.Count > 0 || question.Balls.Count > 0 || parsed.GetValue(from) is not null || parsed.GetValue(to) is not null)
            {
                throw new UserException("--session, --balls, --from, --to: go with the record; --shots reads a file");
            }

            CompareFile(
                console, file, question, CsvFiles.Settings(LaneFile.Read(parsed.GetValue(lane)), parsed.GetValue(hand), parsed.GetValue(map)),
                (parsed.GetValue(targets) ?? []).Select(target => new Crossing(target.Distance, target.Centre)).ToValueList(), shape, written, printed);
            return ExitCodes.Ok;
        });
        return command;
    }

    private static async Task<BallsReport> ReadAsync(BallsQuestion question, ParseResult parsed, CancellationToken cancellationToken)
    {
        if (question.SessionIds.Count == 0 && string.IsNullOrWhiteSpace(question.Bowler))
        {
            throw new UserException("compare: give a file with --shots, or of the record a --bowler or a --session");
        }

        using var store = StoreForReading.Open(parsed);
        var answer = await new BallsReader(store, TimeProvider.System).ReadAsync(question, cancellationToken).ConfigureAwait(false);
        var report = answer.Report ?? throw new UserException($"{answer.Problem}; see: aimtrainer sessions list");

        // A ball that nobody threw is a slip of the pen; one ball only is a finding, and where it fits can still be told.
        return question.Reference is { } asked && !report.Balls.Contains(report.Comparison.Reference, StringComparer.OrdinalIgnoreCase)
            ? throw new UserException($"--reference: found {asked}; allowed: {(report.Balls.Count == 0 ? "a ball; no throw names one" : string.Join(", ", report.Balls))}")
            : report;
    }

    private static void CompareFile(
        UserConsole console, string file, BallsQuestion question, CsvSettings csv, ValueList<Crossing> targets, ReportFormat format, string? written, bool printed)
    {
        if (question.Reference is not { } reference)
        {
            throw new UserException("--reference: is needed with --shots; name the ball that the others are held against");
        }

        using var stream = UserFiles.OpenRead(file);
        var input = CompareInput.Read(CsvShots.Read(stream, file, csv), file, question.Bowler, console.Error.WriteLine);
        if (written is not null)
        {
            var made = BallsBuilder.OfFile(
                question, input.Throws, input.Lines, file, input.Bowler, csv.Hand ?? Hand.Right, csv.Lane, targets, TimeProvider.System.GetUtcNow());
            CompareRecord.Run(console, made, format, written, false);
            return;
        }

        var settings = new ComparisonSettings
        {
            Reference = reference,
            Lane = csv.Lane,
            Targets = targets,
            MarginBoards = question.Margins.MarginBoards,
            MarginDegrees = question.Margins.MarginDegrees,
            MarginFeet = question.Margins.MarginFeet,
            Limits = question.Limits,
        };
        var report = BallComparer.Compare(input.Throws, settings);
        if (report.Problem is { } problem)
        {
            throw UserException.Of([.. report.Excluded.Select(one => $"{file}: {input.Where(one)}: {one.Reason}"), $"{file}: {problem}"]);
        }

        if (printed)
        {
            CompareJson.Write(console, file, input, settings, report);
        }
        else
        {
            new CompareText(console).Print(file, input, report);
        }
    }

    private static ComparableLimits? Limits(double? speed, double? revs, double? angle, double? laydown) =>
        speed is null && revs is null && angle is null && laydown is null
            ? null
            : new ComparableLimits
            {
                SpeedWithin = speed is { } mph ? MilesPerHour.FromMilesPerHour(mph) : null,
                RevsWithin = revs is { } rpm ? Rpm.FromRpm(rpm) : null,
                LaunchAngleWithin = angle is { } degrees ? Degrees.FromDegrees(degrees) : null,
                LaydownWithin = laydown is { } boards ? BoardOffset.FromBoards(boards) : null,
            };
}
