using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>People who follow a program together.</summary>
public sealed record BowlerGroup
{
    /// <summary>Longest name.</summary>
    public const int LongestName = 80;

    /// <summary>Most members.</summary>
    public const int MostMembers = 500;

    /// <summary>Short and one of a kind; made from the name.</summary>
    public required string Id { get; init; }

    /// <summary>Its name: "Tuesday class".</summary>
    public required string Name { get; init; }

    /// <summary>Which program.</summary>
    public required string ProgramId { get; init; }

    /// <summary>The first day of the program's first week.</summary>
    public required DateOnly Starts { get; init; }

    /// <summary>Who is in it, in the order in which they joined.</summary>
    public ValueList<GroupMember> Members { get; init; } = [];

    /// <summary>The member of a name; null when there is none.</summary>
    public GroupMember? Find(string bowler) => Members.AsEnumerable().FirstOrDefault(member => BowlerName.Same(member.Bowler, bowler));

    /// <summary>
    /// Gives every member without a lane one of these: the lane with the fewest, of those the first; none gets more than a lane takes.
    /// </summary>
    /// <param name="lanes">The lanes, from 1.</param>
    /// <returns>The group; members stay without a lane when all are full.</returns>
    public BowlerGroup OnLanes(IReadOnlyList<int> lanes)
    {
        var members = Members.AsEnumerable().ToArray();
        for (var i = 0; i < members.Length; i++)
        {
            if (members[i].Station is null)
            {
                var room = lanes.Select(lane => (Lane: lane, Count: members.Count(member => member.Station == lane))).Where(one => one.Count < Lineup.MostBowlers).ToList();
                members[i] = members[i] with { Station = room.Count == 0 ? null : room.MinBy(one => one.Count).Lane };
            }
        }

        return this with { Members = members.ToValueList() };
    }
}
