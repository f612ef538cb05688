using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Brings a group to its lanes: each member with a session of her own, taking turns with whoever shares the lane.</summary>
public sealed class GroupLanes(LiveStations live, ISessionStore store, DrillShelf shelf, TimeProvider clock)
{
    /// <summary>Starts a drill for every member who has a lane; a comparison with the balls that the member has in the group.</summary>
    /// <param name="group">The group.</param>
    /// <param name="drillId">The drill.</param>
    /// <param name="absent">Members who are not here.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <returns>What came of it, a member each.</returns>
    public async Task<ValueList<MemberStarted>> StartAsync(BowlerGroup group, string drillId, IReadOnlyCollection<string> absent, CancellationToken cancellationToken)
    {
        if (shelf.FileOf(drillId) is not { } file || DrillShelf.Read(file, await File.ReadAllBytesAsync(file, cancellationToken).ConfigureAwait(false)).Value is not { } drill)
        {
            throw new ArgumentException($"there is no drill {drillId} without mistakes", nameof(drillId));
        }

        var roles = DrillSummary.Of(drill.Script).Balls;
        var started = new List<MemberStarted>();
        foreach (var member in group.Members)
        {
            started.Add(await OneAsync(member, drill, roles, absent, cancellationToken).ConfigureAwait(false));
        }

        return started.ToValueList();
    }

    private async Task<MemberStarted> OneAsync(
        GroupMember member, DrillSource drill, ValueList<string> roles, IReadOnlyCollection<string> absent, CancellationToken cancellationToken)
    {
        if (absent.Any(name => BowlerName.Same(name, member.Bowler)))
        {
            return new MemberStarted(member.Bowler, null, null, "not here today");
        }

        if (member.Station is not { } number || live.Find(number) is not { } lane)
        {
            return new MemberStarted(member.Bowler, null, null, member.Station is null ? "has no lane yet" : $"this host has lanes 1 to {live.Count}");
        }

        var known = await store.FindBowlerAsync(member.Bowler, cancellationToken).ConfigureAwait(false);
        var balls = member.Balls.AsEnumerable().Where(ball => roles.AsEnumerable().Contains(ball.Role)).ToValueList();
        var wish = new SessionWish { Bowler = member.Bowler, Drill = drill, Lane = LaneProfileReader.Default, Hand = member.Hand, Balls = balls };
        var setup = wish.ToSetup(number, known, clock.GetUtcNow());
        return await lane.Station.JoinAsync(setup, drill, cancellationToken).ConfigureAwait(false) switch
        {
            StationReply.Refused refused => new MemberStarted(member.Bowler, number, null, refused.Why),
            StationReply.NotKept notKept => new MemberStarted(member.Bowler, number, null, notKept.Why),
            _ => new MemberStarted(member.Bowler, number, setup.SessionId, null),
        };
    }
}
