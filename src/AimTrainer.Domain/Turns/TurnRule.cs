using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>
/// Whose turn it is. Pure: shots move the turn by <see cref="Settle"/>, people by <see cref="Apply"/>. What a restart works out from the
/// last order that was kept and the logs of the sessions is what was shown before it, since both go by the same function.
/// </summary>
public static class TurnRule
{
    /// <summary>An order with nobody in it.</summary>
    /// <param name="station">The station, from 1.</param>
    /// <param name="shotsATurn">1 to <see cref="Lineup.MostShotsATurn"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Lineup Empty(int station, int shotsATurn = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(station, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(shotsATurn, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(shotsATurn, Lineup.MostShotsATurn);
        return new Lineup { Station = station, Number = 0, ShotsATurn = shotsATurn, Places = [] };
    }

    /// <summary>Counts the shots that came, and passes over who is done, until the one whose turn it is has thrown no more.</summary>
    /// <param name="lineup">The order.</param>
    /// <param name="counts">What the session of each place has come to.</param>
    public static Lineup Settle(Lineup lineup, Func<string, SessionCount> counts)
    {
        var places = lineup.Places.AsEnumerable().ToArray();
        var (current, thrown) = (lineup.Current, lineup.ThrownOfTurn);
        while (current is { } index)
        {
            var (place, count) = (places[index], counts(places[index].SessionId));
            if (place.Counted < count.Shots)
            {
                places[index] = place with { Counted = place.Counted + 1 };
                thrown++;
            }
            else if (count.Ended)
            {
                places[index] = place with { Status = TurnStatus.Done };
                thrown = lineup.ShotsATurn;
            }
            else
            {
                break;
            }

            // The last shot of a session ends it as well: the turn is over either way, and the place is seen to be done below.
            if (thrown >= lineup.ShotsATurn)
            {
                (current, thrown) = (After(MarkDone(places, counts), index), 0);
            }
        }

        return lineup with { Places = MarkDone(places, counts).ToValueList(), Current = current, ThrownOfTurn = thrown };
    }

    /// <summary>Follows what people change. The order must be settled.</summary>
    /// <param name="lineup">The order.</param>
    /// <param name="change">The change.</param>
    public static TurnOutcome Apply(Lineup lineup, TurnChange change) => change switch
    {
        TurnChange.Join join => Join(lineup, join),
        TurnChange.Leave leave => With(lineup, leave.SessionId, (place, index) => place.Status switch
        {
            TurnStatus.Here => Done(Vacate(lineup, index, TurnStatus.Away)),
            TurnStatus.Away => Refused(lineup, $"{place.Bowler} has left already"),
            _ => Refused(lineup, $"{place.Bowler} is done: there is nothing to leave"),
        }),
        TurnChange.Return back => With(lineup, back.SessionId, (place, index) => place.Status == TurnStatus.Away
            ? Done(Change(lineup, index, place with { Status = TurnStatus.Here }) is var changed && changed.Current is null ? changed with { Current = index, ThrownOfTurn = 0 } : changed)
            : Refused(lineup, place.Status == TurnStatus.Here ? $"{place.Bowler} is here already" : $"{place.Bowler} is done: start a new session for more")),
        TurnChange.Swap swap => With(lineup, swap.SessionId, (one, index) => With(lineup, swap.With, (other, otherIndex) => Swap(lineup, index, otherIndex))),
        TurnChange.Skip => lineup.Current is not { } now ? Refused(lineup, "nobody has the turn")
            : After(lineup.Places, now) is { } next && next != now ? Done(lineup with { Current = next, ThrownOfTurn = 0 })
            : Refused(lineup, "there is nobody else to throw: pause the session instead"),
        TurnChange.Give give => With(lineup, give.SessionId, (place, index) => place.Status == TurnStatus.Here
            ? Done(lineup with { Current = index, ThrownOfTurn = 0 })
            : Refused(lineup, place.Status == TurnStatus.Away ? $"{place.Bowler} has left: note the return first" : $"{place.Bowler} is done")),
        TurnChange.Length length => length.ShotsATurn is >= 1 and <= Lineup.MostShotsATurn
            ? Done(lineup with { ShotsATurn = length.ShotsATurn, ThrownOfTurn = Math.Min(lineup.ThrownOfTurn, length.ShotsATurn - 1) })
            : Refused(lineup, string.Create(CultureInfo.InvariantCulture, $"shots a turn: found {length.ShotsATurn}; allowed: 1 to {Lineup.MostShotsATurn}")),
        _ => throw new ArgumentException($"unknown change {change}", nameof(change)),
    };

    /// <summary>The place after one in the order that is here: itself when it is the only one, null when none is.</summary>
    internal static int? After(IReadOnlyList<LineupPlace> places, int index)
    {
        for (var step = 1; step <= places.Count; step++)
        {
            var next = (index + step) % places.Count;
            if (places[next].Status == TurnStatus.Here)
            {
                return next;
            }
        }

        return null;
    }

    /// <summary>A place is done when its session is over and all its shots are counted; one that left too, so that nobody waits for it.</summary>
    private static LineupPlace[] MarkDone(LineupPlace[] places, Func<string, SessionCount> counts)
    {
        for (var i = 0; i < places.Length; i++)
        {
            if (counts(places[i].SessionId) is { Ended: true } count && count.Shots <= places[i].Counted)
            {
                places[i] = places[i] with { Status = TurnStatus.Done };
            }
        }

        return places;
    }

    private static TurnOutcome Join(Lineup lineup, TurnChange.Join join)
    {
        var names = lineup.Places.AsEnumerable().Where(place => place.Status != TurnStatus.Done).ToList();
        if (names.Find(place => NameOf(place.Bowler) == NameOf(join.Bowler)) is { } twice)
        {
            return Refused(lineup, $"{twice.Bowler} is on this lane already");
        }

        // Who is done stays in the order, so that a last shot can still be taken back; only who still throws is counted.
        if (names.Count >= Lineup.MostBowlers)
        {
            return Refused(lineup, string.Create(CultureInfo.InvariantCulture, $"lane {lineup.Station} has {Lineup.MostBowlers} bowlers, as many as take turns: take another lane"));
        }

        var places = lineup.Places.AsEnumerable().Append(new LineupPlace(join.SessionId, join.Bowler, TurnStatus.Here, join.Shots)).ToValueList();
        return Done(lineup with
        {
            Places = places,
            Current = lineup.Current ?? places.Count - 1,
            ThrownOfTurn = lineup.Current is null ? 0 : lineup.ThrownOfTurn,
        });
    }

    private static TurnOutcome Swap(Lineup lineup, int one, int other)
    {
        if (one == other)
        {
            return Refused(lineup, "a bowler cannot change places with himself or herself: name two");
        }

        var places = lineup.Places.AsEnumerable().ToArray();
        (places[one], places[other]) = (places[other], places[one]);
        var swapped = lineup with { Places = places.ToValueList() };
        return lineup.Current is not { } now || (now != one && now != other) ? Done(swapped)
            : places[now].Status == TurnStatus.Here ? Done(swapped with { ThrownOfTurn = 0 })
            : Done(swapped with { Current = After(places, now), ThrownOfTurn = 0 });
    }

    private static Lineup Vacate(Lineup lineup, int index, TurnStatus status)
    {
        var changed = Change(lineup, index, lineup.Places[index] with { Status = status });
        return lineup.Current == index ? changed with { Current = After(changed.Places, index), ThrownOfTurn = 0 } : changed;
    }

    private static Lineup Change(Lineup lineup, int index, LineupPlace place)
    {
        var places = lineup.Places.AsEnumerable().ToArray();
        places[index] = place;
        return lineup with { Places = places.ToValueList() };
    }

    private static TurnOutcome With(Lineup lineup, string sessionId, Func<LineupPlace, int, TurnOutcome> change)
    {
        for (var i = 0; i < lineup.Places.Count; i++)
        {
            if (lineup.Places[i].SessionId == sessionId)
            {
                return change(lineup.Places[i], i);
            }
        }

        return Refused(lineup, $"session {FoundText.Short(sessionId)} is not on lane {lineup.Station.ToString(CultureInfo.InvariantCulture)}: look at the lane and choose one of its bowlers");
    }

    private static string NameOf(string bowler) => bowler.Trim().ToUpperInvariant();

    private static TurnOutcome Done(Lineup lineup) => new(lineup with { Number = lineup.Number + 1 }, null);

    private static TurnOutcome Refused(Lineup lineup, string why) => new(lineup, why);
}
