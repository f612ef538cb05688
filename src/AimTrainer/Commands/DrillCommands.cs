using System.CommandLine;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Lists, shows and checks drills.</summary>
internal static class DrillCommands
{
    public static Command Create() => new("drill", "List, show and check drills.") { List(), Show(), Check() };

    private static Command List()
    {
        var json = CommonOptions.Json();
        var command = new Command("list", "Every drill that can be named by its id: your own, then the shipped ones.") { json };
        command.SetAction(parsed =>
        {
            var files = new DrillLibrary(DataPlace.OwnDrills(parsed)).Files();
            var read = files.Select(file => (File: file, Read: DrillReader.Read(file, UserFiles.ReadAllBytes(file)))).ToList();
            var drills = read.Where(one => one.Read.Value is not null).Select(one => (one.File, Drill: one.Read.Value!)).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(drills.Select(one => new
                {
                    one.Drill.Id,
                    one.Drill.Name,
                    one.Drill.Purpose,
                    one.Drill.WhoFor,
                    one.Drill.AboutMinutes,
                    Blocks = one.Drill.Blocks.Count,
                    Shipped = DrillLibrary.IsShipped(one.File),
                    one.File,
                }));
            }
            else
            {
                DrillText.List(drills.Select(one => (one.Drill, DrillLibrary.IsShipped(one.File))), Console.Out);
            }

            var problems = read.SelectMany(one => one.Read.Problems).ToList();
            problems.ForEach(problem => Console.Error.WriteLine(problem));
            return problems.Count == 0 ? ExitCodes.Ok : ExitCodes.BadInput;
        });
        return command;
    }

    private static Command Show()
    {
        var json = CommonOptions.Json();
        var (hand, lane) = (CommonOptions.Hand(), CommonOptions.Lane());
        var (pattern, breakpoint) = (CommonOptions.Pattern(), CommonOptions.Breakpoint());
        var drill = new Argument<string>("drill") { Description = "A drill file or id.", HelpName = "FILE|ID" };
        var command = new Command("show", "A drill with all its blocks, and where its targets are for a bowler on a lane.")
        {
            drill, hand, lane, pattern, breakpoint, json,
        };
        command.SetAction(parsed =>
        {
            var source = new DrillLibrary(DataPlace.OwnDrills(parsed)).Read(parsed.GetValue(drill)!);
            if (parsed.GetValue(json))
            {
                Console.Out.WriteLine(source.Json.TrimEnd());
                return ExitCodes.Ok;
            }

            var setting = new DrillSetting(
                parsed.GetValue(hand) ?? Hand.Right,
                LaneFile.Read(parsed.GetValue(lane)),
                parsed.GetValue(breakpoint),
                parsed.GetValue(pattern) is { } feet ? Feet.FromFeet(feet) : null);
            DrillText.Show(source.Script, setting, Console.Out);
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Check()
    {
        var json = CommonOptions.Json();
        var paths = new Argument<string[]>("paths") { Description = "Drill files, or folders of them.", Arity = ArgumentArity.OneOrMore, HelpName = "PATH..." };
        var command = new Command("check", "Read drills and name every mistake in them: file, line, JSON path, what was found, what is allowed.")
        {
            paths, json,
        };
        command.SetAction(parsed =>
        {
            var files = parsed.GetValue(paths)!.SelectMany(FilesOf).ToList();
            var checks = files.Select(file => (File: file, Read: DrillReader.Read(file, UserFiles.ReadAllBytes(file)))).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(new
                {
                    Files = checks.Select(check => new
                    {
                        check.File,
                        Ok = check.Read.Value is not null,
                        Id = check.Read.Value?.Id,
                        Problems = check.Read.Problems.AsEnumerable().Select(problem => new { problem.Line, problem.Path, problem.Found, problem.Allowed }),
                    }),
                });
            }
            else
            {
                foreach (var check in checks)
                {
                    Console.Out.WriteLine(check.Read.Value is { } drill ? $"{check.File}: good ({drill.Name}, {drill.Blocks.Count} blocks)" : $"{check.File}: {check.Read.Problems.Count} mistakes");
                    foreach (var problem in check.Read.Problems)
                    {
                        Console.Out.WriteLine($"  {problem}");
                    }
                }
            }

            return checks.TrueForAll(check => check.Read.Value is not null) ? ExitCodes.Ok : ExitCodes.BadInput;
        });
        return command;
    }

    private static IEnumerable<string> FilesOf(string path)
    {
        if (!Directory.Exists(path))
        {
            return [path];
        }

        var files = Directory.EnumerateFiles(path, "*.json").Where(file => !file.EndsWith(".schema.json", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).ToList();
        return files.Count > 0 ? files : throw new UserException($"{path}: no drill files in this folder");
    }
}
