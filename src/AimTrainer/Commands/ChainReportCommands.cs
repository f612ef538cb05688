using System.CommandLine;
using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Output;
using AimTrainer.Store.Postgres;
using Spectre.Console;

namespace AimTrainer.Commands;

/// <summary>What the events of all centers add up to.</summary>
internal static class ChainReportCommands
{
    private const string Unlinked = "nobody is called so; link bowlers of centers to a person first (aimtrainer chain link), or name one center's bowler with --center";

    public static Command Bowler(UserConsole console)
    {
        var name = new Argument<string>("name") { Description = "The person of the chain; with --center the bowler's name there.", HelpName = "NAME" };
        var center = CommonOptions.Name("--center", "Only this center.");
        var json = CommonOptions.Json();
        var command = new Command("bowler", "A bowler across centers, by month. Real shots that count only.") { name, center, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = ChainCommands.Open(parsed);
            var lines = await chain.AskAsync(
                async tables => await tables.BowlersOfAsync(parsed.GetValue(center), parsed.GetValue(name)!, cancellationToken).ConfigureAwait(false) is { Count: > 0 } bowlers
                    ? await tables.AcrossAsync(bowlers, cancellationToken).ConfigureAwait(false) : null,
                cancellationToken).ConfigureAwait(false) ?? throw new UserException($"{parsed.GetValue(name)}: {Unlinked}");
            if (parsed.GetValue(json))
            {
                Json.Print(console, lines);
                return ExitCodes.Ok;
            }

            var table = Consoles.Table(
                ("month", ColumnKind.Name), ("center", ColumnKind.Words), ("sessions", ColumnKind.Number), ("crossings", ColumnKind.Number),
                ("held (95 %)", ColumnKind.Number), ("mean miss, boards (95 %)", ColumnKind.Number));
            foreach (var line in lines)
            {
                table.AddRow(Month(line.Month), line.Center, $"{line.Sessions}", $"{line.Graded}", Percent(line.HitRate), WhyText.Cell(line.MissBoards));
            }

            Consoles.Write(Consoles.For(console), table);
            console.Out.WriteLine("Targets of all widths and distances together: for a bowler's course use a test drill (chain report outcomes, trend).");
            return ExitCodes.Ok;
        });
        return command;
    }

    public static Command Outcomes(UserConsole console)
    {
        var drill = new Argument<string>("drill") { Description = "The drill's id.", HelpName = "ID" };
        var (from, to) = Period();
        var json = CommonOptions.Json();
        var command = new Command("outcomes", "What came of a drill: its test blocks, each one's first session against the last.") { drill, from, to, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = ChainCommands.Open(parsed);
            var (start, end) = (Start(parsed, from), End(parsed, to));
            var outcome = await chain.AskAsync(tables => tables.OutcomeAsync(parsed.GetValue(drill)!, start, end, cancellationToken), cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, new { Outcome = outcome, DrillOutcome.Caution });
                return ExitCodes.Ok;
            }

            console.Out.WriteLine($"{outcome.DrillId}: {Words.Count(outcome.People, "bowler")} with test blocks in two sessions or more ({Words.Count(outcome.Sessions, "session")})");
            if (outcome.FirstMissBoards is { } first && outcome.LastMissBoards is { } last)
            {
                console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"mean miss: first {first:0.00}, last {last:0.00} boards"));
            }

            console.Out.WriteLine($"change: {WhyText.Limited(outcome.ChangeBoards)} boards (below 0 is more accurate)");
            console.Out.WriteLine($"smaller at the end: {Percent(outcome.Better)} of them");
            console.Out.WriteLine(DrillOutcome.Caution);
            return ExitCodes.Ok;
        });
        return command;
    }

    public static Command Program(UserConsole console)
    {
        var program = new Argument<string>("program") { Description = "The program's id.", HelpName = "ID" };
        var (from, to) = (TrendCommand.Day("--from", "Groups that began on this day or later."), TrendCommand.Day("--to", "Groups that began on this day or earlier."));
        var json = CommonOptions.Json();
        var command = new Command("program", "What came of a program: sessions thrown, goals reached, the first retention test against the last. Only test blocks count.") { program, from, to, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = ChainCommands.Open(parsed);
            var outcome = await chain.AskAsync(
                tables => tables.ProgramOutcomeAsync(
                    parsed.GetValue(program)!, parsed.GetValue(from) ?? DateOnly.MinValue, parsed.GetValue(to)?.AddDays(1) ?? DateOnly.MaxValue,
                    DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime), cancellationToken),
                cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, new { Outcome = outcome, DrillOutcome.Caution });
                return ExitCodes.Ok;
            }

            console.Out.WriteLine($"{outcome.ProgramId}: {Words.Count(outcome.Groups, "group")}, {Words.Count(outcome.Joined, "bowler")} joined, {outcome.People} of them threw; {outcome.Complete} threw or made up every session");
            console.Out.WriteLine($"sessions: {outcome.Done} in their week, {outcome.MadeUp} made up, {outcome.Missed} missed, {outcome.Open} open or to come");
            console.Out.WriteLine($"of a bowler's sessions that are over, thrown: {Percent(outcome.DoneShare)} (mean of bowlers)");
            console.Out.WriteLine($"goals of thrown sessions: {outcome.GoalsReached} reached, {outcome.GoalsNotYet} not yet, {outcome.GoalsCannotTell} cannot be told, {outcome.GoalsNotKnown} without a known crossing");
            console.Out.WriteLine($"retention tests: {Words.Count(outcome.Tested, "bowler")} threw two or more with the same drill");
            if (outcome.FirstMissBoards is { } first && outcome.LastMissBoards is { } last)
            {
                console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"mean miss: first {first:0.00}, last {last:0.00} boards"));
            }

            console.Out.WriteLine($"change: {WhyText.Limited(outcome.ChangeBoards)} boards (below 0 is more accurate)");
            console.Out.WriteLine($"smaller at the end: {Percent(outcome.Better)} of them");
            console.Out.WriteLine(DrillOutcome.Caution);
            return ExitCodes.Ok;
        });
        return command;
    }

    public static Command Cohorts(UserConsole console)
    {
        var (from, to) = Period();
        var json = CommonOptions.Json();
        var command = new Command("cohorts", "Who came back: of those who came first in a month, how many came in each month after it.") { from, to, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = ChainCommands.Open(parsed);
            var (start, end) = (Start(parsed, from), End(parsed, to));
            var lines = await chain.AskAsync(
                tables => tables.CohortsAsync(start, end, TimeProvider.System.GetUtcNow(), cancellationToken), cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, lines);
                return ExitCodes.Ok;
            }

            var table = Consoles.Table(
                ("first month", ColumnKind.Name), ("bowlers", ColumnKind.Number), ("months later", ColumnKind.Number), ("came", ColumnKind.Number), ("share (95 %)", ColumnKind.Number));
            foreach (var line in lines)
            {
                table.AddRow(Month(line.Month), $"{line.People}", $"{line.MonthsLater}", line.Returned is { } came ? $"{came}" : "-", Percent(line.Share));
            }

            Consoles.Write(Consoles.For(console), table);
            console.Out.WriteLine("A bowler of two centers who was not linked to a person (chain link) counts as two.");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static (Option<DateOnly?> From, Option<DateOnly?> To) Period() =>
        (TrendCommand.Day("--from", "From this day on (UTC)."), TrendCommand.Day("--to", "Up to and with this day (UTC)."));

    private static DateTimeOffset Start(ParseResult parsed, Option<DateOnly?> from) => Midnight(parsed.GetValue(from)) ?? DateTimeOffset.UnixEpoch;

    private static DateTimeOffset End(ParseResult parsed, Option<DateOnly?> to) =>
        Midnight(parsed.GetValue(to))?.AddDays(1) ?? new DateTimeOffset(9999, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static DateTimeOffset? Midnight(DateOnly? day) => day is { } known ? new DateTimeOffset(known, TimeOnly.MinValue, TimeSpan.Zero) : null;

    private static string Month(DateTimeOffset month) => month.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);

    private static string Percent(BoundedEstimate share) => share.Value is null ? $"not known ({share.Why})"
        : string.Create(CultureInfo.InvariantCulture, $"{100 * share.Value:0} % ({100 * share.Low:0} to {100 * share.High:0})");
}
