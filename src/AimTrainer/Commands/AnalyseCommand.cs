using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Works out every figure of accuracy and of where misses came from for a file of shots; nothing is stored.</summary>
internal static class AnalyseCommand
{
    private const string TargetName = "--target";

    // More than anybody reads; the JSON has all.
    private const int MostSentences = 40;

    public static Command Create(UserConsole console)
    {
        var shots = new Option<string>("--shots") { Description = "The shots, CSV (docs/shots.md).", Required = true, HelpName = "FILE" };
        var targets = new Option<AnalyseTarget[]>(TargetName)
        {
            Description = "What the shots were thrown at, as BOARD@FEET or BOARD@FEETxWIDTH (10@15x3); given more than once it is a line.",
            Required = true,
            Arity = ArgumentArity.OneOrMore,
            HelpName = "BOARD@FEET[xWIDTH]",
            CustomParser = ParseTargets,
        };
        var (hand, lane, map, json) = (CommonOptions.Hand(), CommonOptions.Lane(), CommonOptions.Map(), CommonOptions.Json());
        var bowler = CommonOptions.Name("--bowler", "Only this bowler's shots, when the file names bowlers; else those of the first one.");
        var (noise, leftRight) = (WhyCommand.Noise(), WhyCommand.LeftRight());
        var command = new Command("analyse", "Every figure of accuracy for a file of shots, and where its misses came from (docs/analysis.md).")
        {
            shots, targets, hand, lane, map, bowler, noise, leftRight, json,
        };
        command.SetAction(parsed =>
        {
            var file = parsed.GetValue(shots)!;
            var settings = new AccuracySettings { Lane = LaneFile.Read(parsed.GetValue(lane)), NoiseBoards = parsed.GetValue(noise) };
            var csv = CsvFiles.Settings(settings.Lane, parsed.GetValue(hand), parsed.GetValue(map));
            using var stream = UserFiles.OpenRead(file);
            if (!stream.CanSeek)
            {
                throw new UserException($"{file}: cannot be read twice, as an analysis needs to; save it as a file first");
            }

            using var items = CsvShots.Read(stream, file, csv).GetEnumerator();
            var first = FirstShots.Of(items, parsed.GetValue(bowler));
            var whose = parsed.GetValue(bowler) ?? first.Bowler;
            var run = new AnalyseRun(console, file, settings, parsed.GetValue(targets)!, whose, parsed.GetValue(hand) ?? first.Hand ?? Hand.Right)
            {
                Sides = parsed.GetValue(leftRight) ? SideNames.LeftRight : SideNames.InsideOutside,
            };
            run.First(first.AndTheRest());
            if (run.HasGross)
            {
                stream.Position = 0;
                run.SetAside(CsvShots.Read(stream, file, csv));
            }

            stream.Position = 0;
            var again = CsvShots.Read(stream, file, csv);
            if (parsed.GetValue(json))
            {
                run.Json(again);
            }
            else
            {
                run.Text(again, MostSentences);
            }

            return run.Shots == 0 && run.Problems > 0 ? ExitCodes.BadInput : ExitCodes.Ok;
        });
        return command;
    }

    internal static AnalyseTarget[] ParseTargets(ArgumentResult result)
    {
        var targets = new List<AnalyseTarget>();
        foreach (var token in result.Tokens)
        {
            if (Parse(token.Value) is { } target)
            {
                targets.Add(target);
            }
            else
            {
                result.AddError(
                    $"{TargetName}: found {token.Value}; allowed: a board from 0.5 to 39.5, @, feet from 0 to 60, "
                    + $"and perhaps x and a width from {Target.Narrowest} to {Target.Widest} boards, as 10@15x3");
            }
        }

        foreach (var same in targets.GroupBy(target => target.Distance).Where(at => at.Count() > 1))
        {
            result.AddError($"{TargetName}: found {same.Count()} targets at {same.Key} ft; allowed: one at each distance");
        }

        return [.. targets.OrderBy(target => target.Distance)];
    }

    private static AnalyseTarget? Parse(string text)
    {
        var parts = text.Split('@');
        if (parts.Length != 2)
        {
            return null;
        }

        var place = parts[1].Split('x', 'X');
        double? width = null;
        if (!Number(parts[0], Board.NearEdge.Boards, Board.FarEdge.Boards, out var board)
            || place.Length > 2
            || !Number(place[0], 0, LaneProfile.HeadPin.Value, out var feet))
        {
            return null;
        }

        if (place.Length == 2)
        {
            if (!Number(place[1], Target.Narrowest, Target.Widest, out var boards))
            {
                return null;
            }

            width = boards;
        }

        var (centre, distance) = (Board.FromBoards(board), Feet.FromMeasurement(feet));
        return new AnalyseTarget($"board {centre} at {distance} ft", centre, distance, width is { } known ? BoardOffset.FromBoards(known) : null);
    }

    private static bool Number(string text, double low, double high, out double value) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value) && value >= low && value <= high;
}
