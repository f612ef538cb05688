using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>How a bowler stands in a program: what was thrown, made up or missed, and what the tests came to.</summary>
/// <remarks>
/// A planned session is done when each of its drills was thrown to its end in the session's week; made up when that came after the week,
/// within the program's days, and not more often than the program allows. A session of the record counts once. Weeks begin on the day the
/// group began, UTC.
/// </remarks>
/// <param name="Sessions">The planned sessions, in order.</param>
public sealed record ProgramProgress(ValueList<PlannedStanding> Sessions)
{
    private const int DaysAWeek = 7;

    /// <summary>Sessions done or made up.</summary>
    public int Done => Sessions.AsEnumerable().Count(session => session.Standing is SessionStanding.Done or SessionStanding.MadeUp);

    /// <summary>Sessions missed.</summary>
    public int Missed => Sessions.AsEnumerable().Count(session => session.Standing == SessionStanding.Missed);

    /// <summary>Whether every session was done or made up: what a certificate says.</summary>
    public bool IsComplete => Done == Sessions.Count;

    /// <summary>The day on which the last session that counts was thrown, UTC; null when none was.</summary>
    public DateOnly? LastThrownOn => Sessions.AsEnumerable().Max(session => session.ThrownOn);

    /// <summary>The first session that can be thrown now; null when there is none.</summary>
    public PlannedStanding? Next => Sessions.AsEnumerable().FirstOrDefault(session => session.Standing == SessionStanding.Open);

    /// <summary>The progress of a bowler.</summary>
    /// <param name="program">The program.</param>
    /// <param name="starts">The first day of its first week.</param>
    /// <param name="level">The bowler's level.</param>
    /// <param name="thrown">The bowler's sessions.</param>
    /// <param name="blocks">What they add up to; only test blocks are looked at.</param>
    /// <param name="today">Today.</param>
    public static ProgramProgress Of(
        ProgramScript program, DateOnly starts, string level, IEnumerable<ThrownDrill> thrown, IEnumerable<PracticeBlock> blocks, DateOnly today)
    {
        var left = thrown.Where(one => one.Ended).OrderBy(one => one.At).ThenBy(one => one.SessionId, StringComparer.Ordinal).ToList();
        var tests = blocks.Where(block => block.Kind == BlockKind.Test).ToLookup(block => block.SessionId);
        var madeUp = 0;
        var sessions = new List<PlannedStanding>();

        // First whatever was thrown in its own week: a later session must not be used up for making up an earlier one.
        var inWeek = program.Sessions.Select(planned => Take(planned.Session, left, WeekOf(planned.Week).First, WeekOf(planned.Week).Last)).ToList();
        foreach (var ((week, session), found) in program.Sessions.Zip(inWeek))
        {
            var (first, last) = WeekOf(week);
            var lastDay = last.AddDays(program.MakeUp.WithinDays);
            var mayMakeUp = madeUp < program.MakeUp.Most && program.MakeUp.WithinDays > 0;
            var standing = SessionStanding.Done;
            var used = found;
            if (used is null)
            {
                used = mayMakeUp ? Take(session, left, first, lastDay) : null;
                standing = used is not null ? SessionStanding.MadeUp
                    : today < first ? SessionStanding.ToCome
                    : today <= (mayMakeUp ? lastDay : last) ? SessionStanding.Open : SessionStanding.Missed;
                madeUp += used is null ? 0 : 1;
            }

            sessions.Add(new PlannedStanding(
                week, first, session, standing, (used ?? []).Select(one => one.SessionId).ToValueList(), Goals(session, level, used, tests),
                used is { Count: > 0 } ? used.Max(DayOf) : null));
        }

        return new ProgramProgress(sessions.ToValueList());

        (DateOnly First, DateOnly Last) WeekOf(int week) => (starts.AddDays((week - 1) * DaysAWeek), starts.AddDays((week * DaysAWeek) - 1));
    }

    private static List<ThrownDrill>? Take(PlannedSession session, List<ThrownDrill> left, DateOnly first, DateOnly last)
    {
        var used = new List<ThrownDrill>();
        foreach (var drill in session.Drills)
        {
            var one = left.Find(thrown => thrown.DrillId == drill.DrillId && DayOf(thrown) >= first && DayOf(thrown) <= last && !used.Contains(thrown));
            if (one is null)
            {
                return null;
            }

            used.Add(one);
        }

        left.RemoveAll(used.Contains);
        return used;
    }

    private static ValueList<GoalResult> Goals(PlannedSession session, string level, List<ThrownDrill>? used, ILookup<string, PracticeBlock> tests) =>
        session.Drills.AsEnumerable().SelectMany((drill, index) => drill.Goals.AsEnumerable().Where(goal => goal.Level == level).Select(goal =>
        {
            var blocks = used is null ? [] : tests[used[index].SessionId].ToList();
            var rate = HitRateEstimate.Of(blocks.Sum(block => block.Held), blocks.Sum(block => block.Graded), "not thrown yet, or no crossing is known");
            var standing = rate.Rate is null ? GoalStanding.NotKnown
                : rate.WilsonLow >= goal.HeldShare ? GoalStanding.Reached
                : rate.WilsonHigh < goal.HeldShare ? GoalStanding.NotYet : GoalStanding.CannotTell;
            return new GoalResult(drill.DrillId, goal.HeldShare, rate, standing);
        })).ToValueList();

    private static DateOnly DayOf(ThrownDrill thrown) => DateOnly.FromDateTime(thrown.At.UtcDateTime);
}
