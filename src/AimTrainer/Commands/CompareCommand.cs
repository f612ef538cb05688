using System.CommandLine;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Compares balls that were thrown at the same target or line; nothing is stored.</summary>
internal static class CompareCommand
{
    public static Command Create(UserConsole console)
    {
        var shots = new Option<string>("--shots")
        {
            Description = "The shots in the order thrown, CSV with a ball column and perhaps a line column (docs/shots.md).",
            Required = true,
            HelpName = "FILE",
        };
        var reference = CommonOptions.Name("--reference", "The ball that the others are held against, as the file names it.");
        reference.Required = true;
        reference.HelpName = "BALL";
        var targets = new Option<AnalyseTarget[]>("--target")
        {
            Description = "What all throws were aimed at, as BOARD@FEET (10@15); given more than once it is a line.",
            HelpName = "BOARD@FEET[xWIDTH]",
            CustomParser = AnalyseCommand.ParseTargets,
        };
        var (hand, lane, map, json) = (CommonOptions.Hand(), CommonOptions.Lane(), CommonOptions.Map(), CommonOptions.Json());
        var bowler = CommonOptions.Name("--bowler", "Only this bowler's shots, when the file names bowlers; else those of the first one.");
        var boards = CommonOptions.Number("--margin", "A difference of boards up to here does not matter (0.5 when not given).", 0.05, 10, "BOARDS");
        var degrees = CommonOptions.Number("--margin-degrees", "The same for directions (0.5 when not given).", 0.05, 10, "DEGREES");
        var feet = CommonOptions.Number("--margin-feet", "The same for the distance of the breakpoint (1 when not given).", 0.1, 20, "FEET");
        var speed = CommonOptions.Number("--speed-within", "Only throws whose speed lies so near the usual one count.", 0.1, 20, "MPH");
        var revs = CommonOptions.Number("--revs-within", "Only throws whose rev rate lies so near the usual one count.", 1, 500, "RPM");
        var angle = CommonOptions.Number("--angle-within", "Only throws whose launch angle lies so near the line's (or the usual one) count.", 0.05, 10, "DEGREES");
        var laydown = CommonOptions.Number("--laydown-within", "Only throws laid down so near the line's start (or the usual place) count.", 0.1, 20, "BOARDS");
        var command = new Command("compare", "Compare two or more balls thrown at the same target or line, line by line (docs/comparison.md).")
        {
            shots, reference, targets, hand, lane, map, bowler, boards, degrees, feet, speed, revs, angle, laydown, json,
        };
        command.SetAction(parsed =>
        {
            var laneProfile = LaneFile.Read(parsed.GetValue(lane));
            var file = parsed.GetValue(shots)!;
            var csv = CsvFiles.Settings(laneProfile, parsed.GetValue(hand), parsed.GetValue(map));
            using var stream = UserFiles.OpenRead(file);
            var input = CompareInput.Read(CsvShots.Read(stream, file, csv), file, parsed.GetValue(bowler), console.Error.WriteLine);
            var settings = new ComparisonSettings
            {
                Reference = parsed.GetValue(reference)!,
                Lane = laneProfile,
                Targets = (parsed.GetValue(targets) ?? []).Select(target => new Crossing(target.Distance, target.Centre)).ToValueList(),
                MarginBoards = parsed.GetValue(boards) ?? 0.5,
                MarginDegrees = parsed.GetValue(degrees) ?? 0.5,
                MarginFeet = parsed.GetValue(feet) ?? 1,
                Limits = Limits(parsed.GetValue(speed), parsed.GetValue(revs), parsed.GetValue(angle), parsed.GetValue(laydown)),
            };
            var report = BallComparer.Compare(input.Throws, settings);
            if (report.Problem is { } problem)
            {
                throw UserException.Of([.. report.Excluded.Select(one => $"{file}: {input.Where(one)}: {one.Reason}"), $"{file}: {problem}"]);
            }

            if (parsed.GetValue(json))
            {
                CompareJson.Write(console, file, input, settings, report);
            }
            else
            {
                new CompareText(console).Print(file, input, report);
            }

            return ExitCodes.Ok;
        });
        return command;
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
