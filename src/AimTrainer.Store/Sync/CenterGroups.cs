using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>What a center tells its chain of its groups.</summary>
/// <param name="groups">The groups.</param>
/// <param name="programs">The programs that they follow.</param>
public sealed class CenterGroups(GroupRegister groups, ProgramShelf programs)
{
    /// <summary>All groups whose program can be read; the others say nothing of what was planned.</summary>
    /// <exception cref="StoreUnavailableException">The groups cannot be read.</exception>
    public GroupsRequest Read()
    {
        var all = groups.All;
        var known = all.AsEnumerable().Select(group => group.ProgramId).Distinct().Order(StringComparer.Ordinal)
            .Select(programs.Find).OfType<ProgramScript>().Select(program => new DeliveredProgram(program.Id, JsonSerializer.Serialize(program, DomainJson.Options))).ToValueList();
        var ids = known.AsEnumerable().Select(program => program.Id).ToHashSet();
        return new GroupsRequest(
            SyncFormat.Messages, SyncFormat.Events, known,
            all.AsEnumerable().Where(group => ids.Contains(group.ProgramId)).Take(SyncFormat.MostGroups).Select(group => new DeliveredGroup(
                group.Id, group.ProgramId, group.Starts, group.Members.AsEnumerable().Select(member => new DeliveredMember(member.Bowler, member.Level)).ToValueList())).ToValueList());
    }
}
