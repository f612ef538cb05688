using System.CommandLine;
using System.CommandLine.Parsing;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Finds today's frictions and pattern end from measured shots.</summary>
internal static class FitLaneCommand
{
    public static Command Create(UserConsole console)
    {
        var shots = new Option<string>("--shots") { Description = "Measured shots with one ball, CSV (docs/shots.md).", Required = true, HelpName = "FILE" };
        var lane = new Option<string>("--lane")
        {
            Description = "The lane as its sheet says: oil, and frictions to start from (docs/motion.md).",
            Required = true,
            HelpName = "FILE",
        };
        var ball = new Option<string?>("--ball") { Description = "The ball (docs/motion.md); without it a 15 lb ball of 8.55 in, radius of gyration 2.50 in.", HelpName = "FILE" };
        var usual = new Option<string?>("--usual")
        {
            Description = "The bowler's usual throw (docs/motion.md), taken where speed, revs, rotation or tilt were not measured.",
            HelpName = "FILE",
        };
        var noise = CommonOptions.Number("--noise", "Standard deviation of the error of each measured board; estimated when not given.", 0.01, LaneFit.MostNoise, "BOARDS");
        var keep = new Option<LaneParameter[]>("--keep")
        {
            Description = "What is taken from the lane file as it is: oil, dry or pattern; more than one when given again.",
            HelpName = "oil|dry|pattern",
            Arity = ArgumentArity.OneOrMore,
            CustomParser = ParseKeep,
        };
        var (hand, map, json) = (CommonOptions.Hand(), CommonOptions.Map(), CommonOptions.Json());
        var command = new Command("fit-lane", "Find the frictions and the pattern end that explain measured shots, with limits (docs/motion.md).")
        {
            shots, lane, ball, usual, noise, keep, hand, map, json,
        };
        command.SetAction(parsed =>
        {
            var file = parsed.GetValue(shots)!;
            var surface = MotionFiles.Lane(parsed.GetValue(lane)!).Surface;
            var thrown = parsed.GetValue(ball) is { } ballFile ? MotionFiles.Ball(ballFile) : Ball.Usual;
            var bowler = parsed.GetValue(usual) is { } usualFile ? AimFiles.Bowler(usualFile) : null;
            var csv = CsvFiles.Settings(LaneProfileReader.Default, parsed.GetValue(hand), parsed.GetValue(map));
            using var stream = UserFiles.OpenRead(file);
            var input = FitLaneFile.Read(CsvShots.Read(stream, file, csv), bowler, parsed.GetValue(hand), console.Error.WriteLine);
            if (input.Shots.Count == 0)
            {
                throw new UserException($"{file}: no shot in it can be fitted{input.WhyNone}");
            }

            try
            {
                var settings = new FitSettings { NoiseBoards = parsed.GetValue(noise), Keep = (parsed.GetValue(keep) ?? []).ToValueList() };
                var fit = LaneFit.Fit(surface, thrown, [.. input.Shots.Select(shot => shot.Shot)], settings);
                if (parsed.GetValue(json))
                {
                    Json.Print(console, FitAnswer.Of(fit, input));
                }
                else
                {
                    FitLaneText.Print(console, file, fit, input);
                }
            }
            catch (ArgumentException exception)
            {
                throw new UserException($"{file}: {exception.Message}");
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static LaneParameter[] ParseKeep(ArgumentResult result)
    {
        var kept = new List<LaneParameter>();
        foreach (var token in result.Tokens)
        {
            LaneParameter? one = token.Value.ToUpperInvariant() switch
            {
                "OIL" => LaneParameter.OilFriction,
                "DRY" => LaneParameter.DryFriction,
                "PATTERN" => LaneParameter.PatternFeet,
                _ => null,
            };
            if (one is { } known)
            {
                kept.Add(known);
            }
            else
            {
                result.AddError($"--keep: found {FoundText.Short(token.Value)}; allowed: oil, dry, pattern");
            }
        }

        return [.. kept];
    }
}
