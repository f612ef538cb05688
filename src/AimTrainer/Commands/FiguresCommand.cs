using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Reports;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Accuracy of stored shots: of a bowler over sessions, apart by drill, ball and so on, or of one session.</summary>
internal static class FiguresCommand
{
    public static Command Create(UserConsole console)
    {
        var bowler = new Argument<string?>("bowler") { Description = "The bowler's name.", Arity = ArgumentArity.ZeroOrOne, HelpName = "BOWLER" };
        var session = new Option<string?>("--session") { Description = "Instead of a bowler: one session, over or under way; last for the newest.", HelpName = "ID" };
        var by = By();
        var from = TrendCommand.Day("--from", "Sessions from this day on (UTC).");
        var to = TrendCommand.Day("--to", "Sessions up to and with this day (UTC).");
        var json = CommonOptions.Json();
        var command = new Command("figures", "Accuracy of stored shots, with limits: by drill, block, ball, line, part of the lane, speed, early and late (docs/analysis.md).")
        {
            bowler, session, by, from, to, json,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var (name, id) = (parsed.GetValue(bowler), parsed.GetValue(session));
            if (string.IsNullOrWhiteSpace(name) == id is null)
            {
                throw new UserException("figures: give a bowler, or a session with --session, one of the two");
            }

            if (id is not null && (parsed.GetValue(from) is not null || parsed.GetValue(to) is not null))
            {
                throw new UserException("--from, --to: are for a bowler; a session is all of it");
            }

            var grouping = parsed.GetValue(by);
            var filter = name is null ? null : TrendCommand.Filter(name, parsed.GetValue(from), parsed.GetValue(to));
            using var store = StoreForReading.Open(parsed);
            if (filter is null)
            {
                var (setup, drill, record) = await SessionCommands.ReadAsync(store, id!, cancellationToken).ConfigureAwait(false);
                var found = SessionFigures.Of(setup, record);
                found = found with { Accuracy = Only(found.Accuracy, grouping) };
                Print(console, found, found.Accuracy, parsed.GetValue(json), $"{drill.Name} ({drill.Id}) for {setup.Bowler}, {Words.Of(setup.Hand)} hand; "
                    + $"session {setup.SessionId}: {Words.Count(found.Accuracy.Shots, "shot")}{Simulated(setup.Simulated)}");
                return ExitCodes.Ok;
            }

            var figures = await new ProgressReader(store, TimeProvider.System).FiguresAsync(filter, grouping, cancellationToken).ConfigureAwait(false)
                ?? throw new UserException($"{name}: no session of this bowler is stored here; see: aimtrainer sessions list");
            var newest = figures.Newest < figures.Shots ? $"the newest {figures.Newest} of {figures.Shots} shots; choose a period with --from and --to for others"
                : Words.Count(figures.Newest, "shot");
            Print(console, figures, figures.Accuracy, parsed.GetValue(json), $"{figures.Bowler}, {Words.Of(figures.Hand)} hand: {newest}{Simulated(figures.Simulated)}");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static string Simulated(bool simulated) => simulated ? " (simulated: every shot is invented)" : "";

    private static AccuracyReport Only(AccuracyReport accuracy, Grouping? by) => by is null ? accuracy : accuracy with
    {
        Groups = accuracy.Groups.AsEnumerable().Where(group => group.By == by).ToValueList(),
        GroupingsUnknown = accuracy.GroupingsUnknown.AsEnumerable().Where(unknown => unknown.By == by).ToValueList(),
    };

    private static void Print<T>(UserConsole console, T document, AccuracyReport accuracy, bool json, string heading)
    {
        if (json)
        {
            console.Out.WriteLine(JsonSerializer.Serialize(document, FigureJson.Plain));
            return;
        }

        console.Out.WriteLine(heading);
        if (accuracy.Shots == 0)
        {
            console.Out.WriteLine("No shot that counts, so there are no figures.");
            return;
        }

        new AnalyseText(console).Accuracy(accuracy);
        foreach (var unknown in accuracy.GroupingsUnknown)
        {
            console.Out.WriteLine($"Not apart by {FigureNames.Of(unknown.By)}: {unknown.Why}.");
        }
    }

    private static Option<Grouping?> By() => new("--by")
    {
        Description = "Apart by this only; without it by everything.",
        HelpName = string.Join('|', FigureNames.All.Select(each => each.Name)),
        CustomParser = Parse,
    };

    private static Grouping? Parse(ArgumentResult result)
    {
        if (FigureNames.Find(result.Tokens[0].Value) is { } by)
        {
            return by;
        }

        result.AddError($"--by: found {result.Tokens[0].Value}; allowed: {FigureNames.Allowed}");
        return null;
    }
}
