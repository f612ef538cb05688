using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Puts together what the pages of a group show.</summary>
public sealed class GroupView(IPracticeRecord practice, PeopleRegister people, TimeProvider clock)
{
    private const int DaysAWeek = 7;

    /// <summary>The first day of the contest that is on: the begin of the group's present week, or of the program's last.</summary>
    public DateOnly ContestStarts(BowlerGroup group, ProgramScript program)
    {
        var weeks = Math.Clamp((Today.DayNumber - group.Starts.DayNumber) / DaysAWeek, 0, program.Weeks.Count - 1);
        return group.Starts.AddDays(weeks * DaysAWeek);
    }

    /// <summary>Today, UTC, as the record counts days.</summary>
    public DateOnly Today => DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);

    /// <summary>What the group can throw today.</summary>
    public GroupDay Day(BowlerGroup group, ProgramScript program, IEnumerable<MemberView> members) =>
        GroupDay.Of(program, group.Starts, members.Select(one => one.Progress), Today);

    /// <summary>Every member.</summary>
    public async Task<IReadOnlyList<MemberView>> MembersAsync(BowlerGroup group, ProgramScript program, CancellationToken cancellationToken)
    {
        var members = new List<MemberView>();
        foreach (var member in group.Members)
        {
            members.Add(await MemberAsync(group, program, member, cancellationToken).ConfigureAwait(false));
        }

        return members;
    }

    /// <summary>One member.</summary>
    public async Task<MemberView> MemberAsync(BowlerGroup group, ProgramScript program, GroupMember member, CancellationToken cancellationToken)
    {
        var record = await practice.FindPracticeAsync(new PracticeFilter(member.Bowler), cancellationToken).ConfigureAwait(false);

        // What a simulated bowler threw is no person's practice.
        var real = record is { Simulated: false } ? record : null;
        var crossings = real is null ? [] : await practice.LastCrossingsAsync(new PracticeFilter(member.Bowler), PracticeLimits.MostShots, cancellationToken).ConfigureAwait(false);
        var thrown = real?.Sessions.AsEnumerable().Select(session => new ThrownDrill(session.SessionId, session.DrillId, session.StartedAt, session.Ended)) ?? [];
        var blocks = real?.Blocks ?? [];
        var arrows = new TestPlace(null);
        var tests = crossings.AsEnumerable().Where(crossing => crossing is { Kind: BlockKind.Test, MissBoards: not null } && TestPlace.Of(crossing.DistanceFeet) == arrows).ToList();
        var starts = ContestStarts(group, program);
        var series = TestRecord.Of(blocks);
        var improved = series.Series.AsEnumerable().Select(one => ImprovementRule.Of(
            [.. one.Points.AsEnumerable().Select((point, i) => new TrendPoint(i + 1, point.LogSpread))], series.Kinds).Verdict).DefaultIfEmpty(ImprovementVerdict.TooFew).ToList();
        return new MemberView(
            member, people.Of(member.Bowler),
            ProgramProgress.Of(program, group.Starts, member.Level, thrown, blocks, Today),
            WidthHeld.Of(tests.Select(test => test.MissBoards!.Value)),
            improved.Contains(ImprovementVerdict.Improved) ? ImprovementVerdict.Improved : improved[0],
            new ContestEntry(member.Bowler, [.. tests.Where(test => DayOf(test) < starts).Select(test => test.MissBoards!.Value)], [.. tests.Where(test => DayOf(test) >= starts).Select(test => test.MissBoards!.Value)]));
    }

    private static DateOnly DayOf(PracticeCrossing crossing) => DateOnly.FromDateTime(crossing.At.UtcDateTime);
}
