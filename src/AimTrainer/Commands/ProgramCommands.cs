using System.CommandLine;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Lists, shows and checks programs.</summary>
internal static class ProgramCommands
{
    public static Command Create(UserConsole console) =>
        new("program", "List, show and check programs: weeks of sessions.") { List(console), Show(console), Check(console) };

    internal static ProgramShelf Shelf(ParseResult parsed) =>
        new(Path.Combine(DataPlace.Of(parsed), "programs"), new DrillShelf(DataPlace.OwnDrills(parsed)));

    private static Command List(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command("list", "Every program that can be named by its id: your own, then the shipped ones.") { json };
        command.SetAction(parsed =>
        {
            var shelf = Shelf(parsed);
            var read = shelf.Files().Select(file => (File: file, Read: shelf.Read(file, UserFiles.ReadAllBytes(file)))).ToList();
            var programs = read.Where(one => one.Read.Value is not null).Select(one => (one.File, Program: one.Read.Value!)).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(console, programs.Select(one => new
                {
                    one.Program.Id,
                    one.Program.Name,
                    one.Program.Purpose,
                    one.Program.WhoFor,
                    Weeks = one.Program.Weeks.Count,
                    Shipped = ProgramShelf.IsShipped(one.File),
                    one.File,
                }));
            }
            else
            {
                ProgramText.List(programs.Select(one => (one.Program, ProgramShelf.IsShipped(one.File))), console);
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
        var program = new Argument<string>("program") { Description = "A program file or id.", HelpName = "FILE|ID" };
        var command = new Command("show", "A program: who may join, its weeks, sessions, drills and goals.") { program, json };
        command.SetAction(parsed =>
        {
            var shelf = Shelf(parsed);
            var name = parsed.GetValue(program)!;
            var file = File.Exists(name) ? name : shelf.FileOf(name) ?? throw NotFound(name, shelf);
            var bytes = UserFiles.ReadAllBytes(file);
            var script = shelf.Read(file, bytes) is { Value: { } value } ? value : throw UserException.Of(shelf.Read(file, bytes).Problems);
            if (parsed.GetValue(json))
            {
                Json.Print(console, script);
            }
            else
            {
                ProgramText.Show(script, console.Out);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Check(UserConsole console)
    {
        var json = CommonOptions.Json();
        var files = new Argument<string[]>("files") { Description = "Program files.", Arity = ArgumentArity.OneOrMore, HelpName = "FILE..." };
        var command = new Command("check", "Read programs and name every mistake in them: file, line, JSON path, what was found, what is allowed.") { files, json };
        command.SetAction(parsed =>
        {
            var shelf = Shelf(parsed);
            var checks = parsed.GetValue(files)!.Select(file => (File: file, Read: shelf.Read(file, UserFiles.ReadAllBytes(file)))).ToList();
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
                    console.Out.WriteLine(check.Read.Value is { } program
                        ? $"{check.File}: good ({program.Name}, {Words.Count(program.Weeks.Count, "week")}, {Words.Count(program.Sessions.Count(), "session")})"
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

    private static UserException NotFound(string name, ProgramShelf shelf)
    {
        var ids = shelf.Files().Select(file => Path.GetFileNameWithoutExtension(file)!).ToList();
        return new UserException(Likeness.Nearest(name, ids) is { } nearest
            ? $"{name}: no such file, and no program of that id; did you mean {nearest}? (see: aimtrainer program list)"
            : $"{name}: no such file, and no program of that id; allowed: a program file, or one of {string.Join(", ", ids)}");
    }
}
