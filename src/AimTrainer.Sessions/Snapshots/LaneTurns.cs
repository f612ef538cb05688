using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Whose turn it is on a lane that several bowlers share, for everything that shows it.</summary>
/// <param name="Number">Which state of the order this is; a change says which one was seen.</param>
/// <param name="ShotsATurn">Shots of one turn.</param>
/// <param name="ThrownOfTurn">Shots of the present turn so far.</param>
/// <param name="Places">The bowlers in order.</param>
/// <param name="Last">The newest shot of the lane; null before the first.</param>
public sealed record LaneTurns(int Number, int ShotsATurn, int ThrownOfTurn, ValueList<LaneTurn> Places, LastThrow? Last)
{
    /// <summary>Who throws now; null when nobody does.</summary>
    public LaneTurn? Now => Places.AsEnumerable().FirstOrDefault(place => place.IsNow);

    /// <summary>Who throws after that; null when there is no other.</summary>
    public LaneTurn? Next => Places.AsEnumerable().FirstOrDefault(place => place.IsNext);

    /// <summary>
    /// What bowlers and screens are shown of it: no names of the record, and of another's shot not what it came to, since that is told by
    /// her drill's feedback, to her.
    /// </summary>
    public LaneTurns ForScreens() => this with
    {
        Places = Places.AsEnumerable().Select(place => place with { Bowler = null }).ToValueList(),
        Last = Last is { } last ? last with { Bowler = null, Held = null } : null,
    };

    /// <summary>The picture of an order.</summary>
    internal static LaneTurns Of(Lineup lineup, Func<string, SessionState> sessions, Func<SessionSetup, string> screenName, LastThrow? last)
    {
        var names = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var next = lineup.Next;
        return new LaneTurns(lineup.Number, lineup.ShotsATurn, lineup.ThrownOfTurn, lineup.Places.AsEnumerable().Select((place, index) =>
        {
            var state = sessions(place.SessionId);
            return new LaneTurn(
                place.SessionId, place.Bowler, Distinct(screenName(state.Setup), names), place.Status, state.Phase, state.LastNumber, lineup.Current == index, ReferenceEquals(place, next));
        }).ToValueList(), last);
    }

    /// <summary>Two bowlers of one lane may have the same initials: the second gets a number.</summary>
    private static string Distinct(string name, Dictionary<string, int> names)
    {
        var count = names[name] = names.GetValueOrDefault(name) + 1;
        return count == 1 ? name : $"{name} {count.ToString(CultureInfo.InvariantCulture)}";
    }
}
