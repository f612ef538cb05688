using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Output;
using AimTrainer.Reports;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Whether a bowler is getting better: from the record, or from a file of one value a session.</summary>
internal static class TrendCommand
{
    public static Command Create(UserConsole console)
    {
        var bowler = new Argument<string?>("bowler") { Description = "The bowler's name.", Arity = ArgumentArity.ZeroOrOne, HelpName = "BOWLER" };
        var series = new Option<string?>("--series")
        {
            Description = "Instead of a bowler: a CSV file with the columns session and value, one row a session.",
            HelpName = "FILE",
        };
        var kind = Kind();
        var (from, to) = (Day("--from", "Sessions from this day on (UTC)."), Day("--to", "Sessions up to and with this day (UTC)."));
        var plan = new TrendPlanOptions();
        var json = CommonOptions.Json();
        var command = new Command("trend", "Whether a bowler is getting better, from test blocks only, and how sure that is (docs/trends.md).")
        {
            bowler, series, kind, from, to, json,
        };
        plan.AddTo(command);
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var (name, file) = (parsed.GetValue(bowler), parsed.GetValue(series));
            if (string.IsNullOrWhiteSpace(name) == file is null)
            {
                throw new UserException("trend: give a bowler, or a file with --series, one of the two");
            }

            if (file is not null)
            {
                if (parsed.GetValue(from) is not null || parsed.GetValue(to) is not null || plan.AnyGiven(parsed))
                {
                    throw new UserException("--series: goes with --kind and --json only; --from, --to and a program are for a bowler of the record");
                }

                PrintSeries(console, file, parsed.GetValue(kind) ?? TrendScale.Logarithm, parsed.GetValue(json));
                return ExitCodes.Ok;
            }

            if (parsed.GetValue(kind) is not null)
            {
                throw new UserException("--kind: is for a file given with --series; the record knows what it holds");
            }

            var filter = Filter(name!, parsed.GetValue(from), parsed.GetValue(to));
            var program = plan.Read(parsed);
            using var store = StoreForReading.Open(parsed);
            var practice = await store.FindPracticeAsync(filter, cancellationToken).ConfigureAwait(false)
                ?? throw new UserException($"{name}: no session of this bowler is stored here; see: aimtrainer sessions list");
            var record = TestRecord.Of(practice.Blocks);
            var view = program is null ? null : ProgramView.Of(program, record, DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime));
            var chosen = filter.From is not null || filter.To is not null;
            var trend = BowlerTrend.Of(practice, record, chosen, view);
            if (parsed.GetValue(json))
            {
                Json.Print(console, trend);
            }
            else
            {
                TrendView.Print(console, practice, trend);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>A bowler's practice between two days.</summary>
    /// <exception cref="UserException">The first day lies after the last.</exception>
    internal static PracticeFilter Filter(string bowler, DateOnly? from, DateOnly? to)
    {
        var filter = new PracticeFilter(bowler, Midnight(from), Midnight(to?.AddDays(1)));
        return filter is { From: { } first, To: { } end } && first >= end
            ? throw new UserException("--from, --to: the first day must not lie after the last")
            : filter;
    }

    /// <summary>A day, written as 2026-09-01.</summary>
    internal static Option<DateOnly?> Day(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "DAY",
        CustomParser = result =>
        {
            if (DateOnly.TryParseExact(result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
                && day < DateOnly.MaxValue)
            {
                return day;
            }

            result.AddError($"{name}: found {result.Tokens[0].Value}; allowed: a day such as 2026-09-01");
            return null;
        },
    };

    private static Option<TrendScale?> Kind() => new("--kind")
    {
        Description = "What the file's values are: spread (variable errors in boards; the usual), or other, which is never called improved.",
        HelpName = "spread|other",
        CustomParser = ParseKind,
    };

    private static TrendScale? ParseKind(ArgumentResult result)
    {
        switch (result.Tokens[0].Value)
        {
            case "spread":
                return TrendScale.Logarithm;
            case "other":
                return TrendScale.AsGiven;
            default:
                result.AddError($"--kind: found {result.Tokens[0].Value}; allowed: spread, other");
                return null;
        }
    }

    private static DateTimeOffset? Midnight(DateOnly? day) => day is { } known ? new DateTimeOffset(known.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero) : null;

    private static void PrintSeries(UserConsole console, string file, TrendScale scale, bool json)
    {
        var read = TrendSeriesFile.Read(file, UserFiles.ReadAllBytes(file), scale);
        var series = read.Value ?? throw UserException.Of(read.Problems);
        var figures = TrendFigures.Of(series.Points, scale);
        if (json)
        {
            Json.Print(console, new { Kind = scale == TrendScale.Logarithm ? "spread" : "other", series.Points, MissingSessions = series.Missing, Figures = figures });
            return;
        }

        var missing = series.Missing.Count > 0 ? $", {series.Missing.Count} more without a value" : "";
        console.Out.WriteLine($"{file}: {Words.Count(series.Points.Count, "session")} with a value{missing}");
        var lines = scale == TrendScale.Logarithm ? TrendWords.Spread(figures, NameOf) : TrendWords.Other(figures, NameOf);
        foreach (var line in lines)
        {
            console.Out.WriteLine($"- {line}");
        }
    }

    private static string NameOf(double session) => string.Create(CultureInfo.InvariantCulture, $"session {session}");
}
