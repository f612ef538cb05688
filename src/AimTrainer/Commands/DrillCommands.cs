using System.CommandLine;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Lists, shows and checks drills.</summary>
internal static class DrillCommands
{
    public static Command Create(UserConsole console) => new("drill", "List, show and check drills.") { List(console), Show(console), Check(console) };

    private static Command List(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command("list", "Every drill that can be named by its id: your own, then the shipped ones.") { json };
        command.SetAction(parsed =>
        {
            var files = new DrillLibrary(DataPlace.OwnDrills(parsed)).Files();
            var read = files.Select(file => (File: file, Read: DrillShelf.Read(file))).ToList();
            var drills = read.Where(one => one.Read.Value is not null).Select(one => (one.File, Drill: one.Read.Value!.Script)).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(console, drills.Select(one => new
                {
                    one.Drill.Id,
                    one.Drill.Name,
                    one.Drill.Purpose,
                    one.Drill.WhoFor,
                    one.Drill.AboutMinutes,
                    Blocks = one.Drill.Blocks.Count,
                    Shipped = DrillShelf.IsShipped(one.File),
                    one.File,
                }));
            }
            else
            {
                DrillText.List(drills.Select(one => (one.Drill, DrillShelf.IsShipped(one.File))), console);
            }

            var problems = read.SelectMany(one => one.Read.Problems).ToList();
            problems.ForEach(problem => console.Error.WriteLine(problem));
            return problems.Count == 0 ? ExitCodes.Ok : ExitCodes.BadInput;
        });
        return command;
    }

    private static Command Show(UserConsole console)
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
                console.Out.WriteLine(source.Json.TrimEnd());
                return ExitCodes.Ok;
            }

            var setting = new DrillSetting(
                parsed.GetValue(hand) ?? Hand.Right,
                LaneFile.Read(parsed.GetValue(lane)),
                parsed.GetValue(breakpoint),
                parsed.GetValue(pattern) is { } feet ? Feet.FromFeet(feet) : null);
            DrillText.Show(source.Script, setting, console.Out);
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Check(UserConsole console)
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
            var checks = files.Select(file => (File: file, Read: Read(file))).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(console, new
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
                    console.Out.WriteLine(check.Read.Value is { } drill
                        ? $"{check.File}: good ({drill.Name}, {Words.Count(drill.Blocks.Count, "block")})"
                        : $"{check.File}: {Words.Count(check.Read.Problems.Count, "mistake")}");
                    foreach (var problem in check.Read.Problems)
                    {
                        console.Out.WriteLine($"  {problem}");
                    }
                }
            }

            return checks.TrueForAll(check => check.Read.Value is not null) ? ExitCodes.Ok : ExitCodes.BadInput;
        });
        return command;
    }

    /// <summary>One file that cannot be read is a mistake like others: the rest is checked.</summary>
    private static FileRead<DrillScript> Read(string file)
    {
        try
        {
            return DrillReader.Read(file, UserFiles.ReadAllBytes(file));
        }
        catch (UserException exception)
        {
            return new FileRead<DrillScript>(null, [new FileProblem(file, 0, "", exception.Message[(file.Length + 2)..], "a drill file that can be read")]);
        }
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
