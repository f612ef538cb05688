using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What a group can throw of its program on a day, or why there is nothing.</summary>
/// <param name="Stage">Where the group is.</param>
/// <param name="Open">What can be thrown, for most bowlers first, then by week; empty unless something is open.</param>
/// <param name="NextWeek">The next week that has not begun, from 1; null when all have.</param>
/// <param name="NextWeekStarts">Its first day.</param>
/// <param name="LastDay">The last day of the program's last week.</param>
public sealed record GroupDay(GroupStage Stage, ValueList<OpenSession> Open, int? NextWeek, DateOnly? NextWeekStarts, DateOnly LastDay)
{
    private const int DaysAWeek = 7;

    /// <summary>The day of a group. Without bowlers only the weeks count.</summary>
    /// <param name="program">The program.</param>
    /// <param name="starts">The first day of its first week.</param>
    /// <param name="progress">How each bowler stands, on the same day.</param>
    /// <param name="today">The day.</param>
    public static GroupDay Of(ProgramScript program, DateOnly starts, IEnumerable<ProgramProgress> progress, DateOnly today)
    {
        var bowlers = progress.ToList();
        var last = starts.AddDays((program.Weeks.Count * DaysAWeek) - 1);
        var week = today < starts ? 0 : ((today.DayNumber - starts.DayNumber) / DaysAWeek) + 1;
        int? next = week < program.Weeks.Count ? week + 1 : null;
        var open = bowlers.SelectMany(one => one.Sessions.AsEnumerable().Where(session => session.Standing == SessionStanding.Open)).GroupBy(one => (one.Week, one.Session.Name))
            .Select(same => Session(same.First(), same.Count(), program.MakeUp, today)).OrderByDescending(one => one.Bowlers).ThenBy(one => one.Week).ToValueList();
        var over = bowlers.Count == 0 ? today > last : bowlers.All(one => one.Sessions.AsEnumerable().All(session => session.Standing is not (SessionStanding.Open or SessionStanding.ToCome)));
        var stage = over ? GroupStage.Over : open.Count > 0 ? GroupStage.Open : today < starts ? GroupStage.ToBegin : bowlers.Count == 0 ? GroupStage.Open : GroupStage.WeekDone;
        return new GroupDay(stage, open, next, next is { } number ? starts.AddDays((number - 1) * DaysAWeek) : null, last);
    }

    private static OpenSession Session(PlannedStanding standing, int bowlers, ProgramMakeUp makeUp, DateOnly today)
    {
        var ends = standing.WeekStarts.AddDays(DaysAWeek - 1);
        var late = today > ends;
        return new OpenSession(standing.Week, standing.Session, bowlers, late, late ? ends.AddDays(makeUp.WithinDays) : ends);
    }
}
