using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>The maps of several projectors of one lane, with overlaps that agree.</summary>
/// <param name="Maps">The maps in the order given; as they were when they cannot be joined.</param>
/// <param name="Problems">Why they cannot be joined and what to do, in words; empty when they can.</param>
internal sealed record JoinedMaps(ValueList<SavedMap> Maps, ValueList<string> Problems)
{
    /// <summary>Sets the overlaps.</summary>
    public static JoinedMaps Of(IReadOnlyList<SavedMap> maps)
    {
        var join = JoinedStretches.Of([.. maps.Select(map => map.Map.Stretch)]);
        return join.Problems.Count > 0
            ? new JoinedMaps(maps.ToValueList(), join.Problems)
            : new JoinedMaps(
                maps.Select((map, i) => map.Map.Stretch == join.Stretches[i] ? map : map with { Map = map.Map with { Stretch = join.Stretches[i] } }).ToValueList(),
                []);
    }

    /// <summary>Joins what was loaded for one station; those without a map stay as they are.</summary>
    public static ValueList<MapLoad> Of(ValueList<MapLoad> loads)
    {
        var all = loads.AsEnumerable().Select(load => OlderOnItsMonitor(load, loads)).ToList();
        var there = all.Where(load => load.Map is not null).ToList();
        if (there.Count == 0)
        {
            return all.ToValueList();
        }

        var joined = Of([.. there.Select(load => load.Map!)]);
        return all.Select(load => there.IndexOf(load) is >= 0 and var place ? With(load, joined.Maps[place], joined.Problems) : load).ToValueList();
    }

    private static MapLoad With(MapLoad load, SavedMap map, ValueList<string> problems)
    {
        var says = problems.Count > 0 ? $"the projectors of station {load.Place.Station} do not share the lane well: {string.Join("; ", problems.AsEnumerable())}"
            : map != load.Map ? $"the overlap of the projector \"{load.Place.Projector}\" with its neighbour was worked out anew, because one of them has another map now, or none"
            : "";
        return load with { Map = map, Why = string.Join(". ", new[] { load.Why, says }.Where(text => text.Length > 0)) };
    }

    private static MapLoad OlderOnItsMonitor(MapLoad load, ValueList<MapLoad> loads)
    {
        var newer = loads.AsEnumerable().FirstOrDefault(
            other => other.Place != load.Place && other.Map?.Monitor is { } monitor && monitor.Monitor == load.Map?.Monitor?.Monitor && other.Map.SavedAt > load.Map.SavedAt);
        return newer is null ? load : load with
        {
            Map = null,
            Why = $"the map of the projector \"{load.Place.Projector}\" is not used: its monitor was calibrated since as the projector \"{newer.Place.Projector}\". "
                + $"Put the old one aside: aimtrainer calibrate forget --station {load.Place.Station} --name {load.Place.Projector}",
        };
    }
}
