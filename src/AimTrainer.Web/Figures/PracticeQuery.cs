using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Reports;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Whose practice, when, against which program and apart by what, as an address asks for it.</summary>
/// <param name="Filter">Whose, and when.</param>
/// <param name="Plan">A program; null without one.</param>
/// <param name="By">Apart by this; null when nothing is said.</param>
internal sealed record PracticeQuery(PracticeFilter Filter, PracticePlan? Plan, Grouping? By)
{
    /// <summary>Reads what was asked for; a part that is empty was not asked for.</summary>
    /// <returns>The query, or what is wrong with it.</returns>
    public static (PracticeQuery? Query, string Problem) Read(string bowler, PracticeAsked asked)
    {
        var problems = new List<string>();
        var (from, to) = (Day("from", asked.From, problems), Day("to", asked.To, problems));
        if (from > to)
        {
            problems.Add($"from, to: found {asked.From} to {asked.To}; allowed: a first day that does not lie after the last");
        }

        var by = string.IsNullOrEmpty(asked.By) ? null : FigureNames.Find(asked.By);
        if (by is null && !string.IsNullOrEmpty(asked.By))
        {
            problems.Add($"by: found {FoundText.Quoted(asked.By)}; allowed: {FigureNames.Allowed}");
        }

        var plan = PlanOf(asked, problems);
        return problems.Count > 0
            ? (null, string.Join("\n", problems))
            : (new PracticeQuery(new PracticeFilter(bowler, Midnight(from), Midnight(to?.AddDays(1))), plan, by), "");
    }

    private static PracticePlan? PlanOf(PracticeAsked asked, List<string> problems)
    {
        if (!asked.HasProgram)
        {
            return null;
        }

        var before = problems.Count;
        var starts = Day("starts", asked.Starts, problems);
        var weeks = Number("weeks", asked.Weeks, 1, PracticePlan.MostWeeks, whole: true, problems);
        var sessions = Number("sessionsAWeek", asked.SessionsAWeek, 1, PracticePlan.MostSessionsAWeek, whole: true, problems);
        var goal = Number("goalSpreadBoards", asked.GoalSpreadBoards, PracticePlan.SmallestGoal, PracticePlan.LargestGoal, whole: false, problems);
        var feet = Number("goalFeet", asked.GoalFeet, 0, LaneProfile.HeadPin.Value, whole: false, problems);
        if (problems.Count > before)
        {
            return null;
        }

        if (starts is not { } first || weeks is not { } many || sessions is not { } often)
        {
            problems.Add("program: found a part of one; allowed: a first day (starts), weeks and sessionsAWeek together; goalSpreadBoards and goalFeet may be left out");
            return null;
        }

        return new PracticePlan { Starts = first, Weeks = (int)many, SessionsAWeek = (int)often, GoalSpreadBoards = goal, GoalFeet = feet };
    }

    private static DateOnly? Day(string name, string? text, List<string> problems)
    {
        if (string.IsNullOrEmpty(text))
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day < DateOnly.MaxValue)
        {
            return day;
        }

        problems.Add($"{name}: found {FoundText.Quoted(text)}; allowed: a day such as 2026-09-01");
        return null;
    }

    private static double? Number(string name, string? text, double least, double most, bool whole, List<string> problems)
    {
        if (string.IsNullOrEmpty(text))
        {
            return null;
        }

        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most && (!whole || number % 1 == 0))
        {
            return number;
        }

        problems.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: found {FoundText.Quoted(text)}; allowed: {(whole ? "a whole number" : "a number")} from {least} to {most}"));
        return null;
    }

    private static DateTimeOffset? Midnight(DateOnly? day) => day is { } known ? new DateTimeOffset(known.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero) : null;
}
