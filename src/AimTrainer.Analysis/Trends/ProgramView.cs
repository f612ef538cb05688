using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A program as it stands: what was planned, what was done, and where the goal is.</summary>
/// <param name="Plan">The program.</param>
/// <param name="Weeks">Every week of it.</param>
/// <param name="PlannedSoFar">Sessions planned in the weeks that are over.</param>
/// <param name="DoneSoFar">Visits in the weeks that are over.</param>
/// <param name="Goal">Progress to the goal; null without one.</param>
public sealed record ProgramView(PracticePlan Plan, ValueList<ProgramWeek> Weeks, int PlannedSoFar, int DoneSoFar, GoalProgress? Goal)
{
    private const int DaysAWeek = 7;

    /// <summary>A program against the record.</summary>
    /// <param name="plan">The program.</param>
    /// <param name="record">The bowler's record; parts before the program's first day are not looked at.</param>
    /// <param name="today">Today (UTC).</param>
    public static ProgramView Of(PracticePlan plan, TestRecord record, DateOnly today)
    {
        var done = record.Visits.AsEnumerable().Where(visit => visit.Throws > 0).Select(visit => DayOf(visit.At))
            .GroupBy(day => Math.Floor((day.DayNumber - plan.Starts.DayNumber) / (double)DaysAWeek)).ToDictionary(week => week.Key, week => week.Count());
        var weeks = Enumerable.Range(0, plan.Weeks).Select(week => new ProgramWeek(
            week + 1,
            plan.Starts.AddDays(week * DaysAWeek),
            plan.SessionsAWeek,
            done.GetValueOrDefault(week),
            plan.Starts.AddDays((week + 1) * DaysAWeek) <= today)).ToValueList();
        var over = weeks.AsEnumerable().Where(week => week.Over).ToList();
        return new ProgramView(plan, weeks, over.Sum(week => week.Planned), over.Sum(week => week.Done), Progress(plan, record));
    }

    private static GoalProgress? Progress(PracticePlan plan, TestRecord record)
    {
        if (plan.GoalSpreadBoards is not { } goal)
        {
            return null;
        }

        var place = plan.GoalFeet is { } feet ? TestPlace.Of(feet) : new TestPlace(null);
        var series = record.Series.AsEnumerable().FirstOrDefault(series => series.Place == place);
        return GoalProgress.Of(goal, place, [.. series?.Points.AsEnumerable().Where(point => DayOf(point.At) >= plan.Starts) ?? []]);
    }

    private static DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(at.UtcDateTime);
}
