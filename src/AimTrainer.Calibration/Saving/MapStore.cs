using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>
/// The maps in a folder. Each save is a new file, written beside, flushed to the disk and then renamed, so that a power cut leaves
/// either the old map or the new one; the last ones are kept, so that a broken file or a bad calibration costs nothing.
/// </summary>
/// <param name="folder">The folder; it need not exist.</param>
/// <param name="time">The clock, for the time of a save.</param>
public sealed class MapStore(string folder, TimeProvider time)
{
    /// <summary>How many maps of a projector are kept.</summary>
    public const int Kept = 5;

    /// <summary>Saves a map; from now on it holds for its projector.</summary>
    /// <param name="map">The map, with its place and its monitor.</param>
    /// <exception cref="ArgumentException">It has no place or no monitor, or a place that cannot be.</exception>
    public MapStored Save(SavedMap map)
    {
        var place = map.Place ?? throw new ArgumentException("a map is saved for a projector", nameof(map));
        if (map.Monitor is null || place.Problem is not null)
        {
            throw new ArgumentException(place.Problem ?? "a map is saved for a monitor and mode", nameof(map));
        }

        try
        {
            Directory.CreateDirectory(folder);
            ForgetUnfinished(Path.Combine(folder, MapVersion.NameOf(place, 0))[..^"0000.json".Length]);
            var versions = Versions(place);
            var number = Math.Max(versions.Count > 0 ? versions[0].Number : 0, HighestUndone(place)) + 1;
            var file = Path.Combine(folder, MapVersion.NameOf(place, number));
            var unfinished = file + MapVersion.Unfinished;
            using (var stream = new FileStream(unfinished, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                stream.Write(MapFileWriter.Write(map with { SavedAt = time.GetUtcNow() }));
                stream.Flush(flushToDisk: true);
            }

            File.Move(unfinished, file, overwrite: false);
            foreach (var old in versions.Skip(Kept - 1))
            {
                Remove(old.File);
            }

            return new MapStored(file, "");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new MapStored(
                null, $"{folder}: the map was not saved, and the one before still holds. See that the folder can be written to and the disk has room. "
                + $"(The system says: {exception.Message})");
        }
    }

    /// <summary>
    /// Saves a map among those of the other projectors of its lane: where two draw the same lane their overlaps are set so that the shares
    /// of light add up to 1. A power cut between two files costs nothing: <see cref="LoadAll"/> works the overlaps out again.
    /// </summary>
    /// <param name="map">The map, with its place and its monitor.</param>
    /// <exception cref="ArgumentException">It has no place or no monitor, or a place that cannot be.</exception>
    public MapStored SaveJoined(SavedMap map)
    {
        var place = map.Place ?? throw new ArgumentException("a map is saved for a projector", nameof(map));
        var others = NewestOf(place.Station).AsEnumerable()
            .Where(load => load.Place != place && load.Map is { } other && other.Monitor?.Monitor != map.Monitor?.Monitor).Select(load => load.Map!).ToList();
        var joined = JoinedMaps.Of([map, .. others]);
        var stored = Save(joined.Maps[0]);
        var remarks = joined.Problems.AsEnumerable().ToList();
        for (var i = 0; stored.File is not null && i < others.Count; i++)
        {
            if (joined.Maps[i + 1] != others[i] && Save(joined.Maps[i + 1]) is { File: null } failed)
            {
                remarks.Add(
                    $"the overlap of the projector \"{others[i].Place!.Projector}\" could not be written down; it is worked out anew whenever the maps are used ({failed.Problem})");
            }
        }

        return stored with { Remarks = remarks.ToValueList() };
    }

    /// <summary>Takes a save back: the map that was used before it, if there was one, holds again.</summary>
    /// <param name="file">The file that the save gave.</param>
    /// <returns>The file that was put aside; or why it was not.</returns>
    public MapStored TakeBack(string file)
    {
        try
        {
            if (File.Exists(file) && MapVersion.Of(file) is { } version)
            {
                PutAside([version]);
            }

            return new MapStored(file, "");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new MapStored(null, $"{file}: the map was not taken back. See that the folder can be written to. (The system says: {exception.Message})");
        }
    }

    /// <summary>Puts all maps of a projector aside: it is no longer on this lane, or has another name now.</summary>
    /// <param name="place">Which projector.</param>
    /// <returns>The newest file that was put aside; or why there is none.</returns>
    public MapStored Forget(MapPlace place)
    {
        try
        {
            var versions = Versions(place);
            PutAside(versions);
            return versions.Count > 0
                ? new MapStored(versions[0].File, "")
                : new MapStored(null, $"the projector \"{place.Projector}\" of station {place.Station} has no map");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new MapStored(null, $"{folder}: the maps were not put aside. See that the folder can be written to. (The system says: {exception.Message})");
        }
    }

    /// <summary>The map that holds for a projector as its monitor is driven now.</summary>
    /// <param name="place">Which projector.</param>
    /// <param name="now">Its monitor and mode; null when the monitor is not there.</param>
    public MapLoad Load(MapPlace place, MonitorMode? now) => Judged(Newest(place), now);

    /// <summary>
    /// The maps of all projectors of a station, by the name of the projector, with overlaps that agree: where the files differ (one of the
    /// projectors was calibrated again, or went back to an earlier map), they are worked out from the stretches and <see cref="MapLoad.Why"/>
    /// says so. Of two projectors on one monitor the one calibrated last counts.
    /// </summary>
    /// <param name="station">The station.</param>
    /// <param name="monitors">The monitors that are there now.</param>
    public ValueList<MapLoad> LoadAll(int station, IReadOnlyList<MonitorMode> monitors) => JoinedMaps.Of(NewestOf(station)).AsEnumerable()
        .Select(load => Judged(load, monitors.FirstOrDefault(monitor => monitor.Monitor == load.Map?.Monitor?.Monitor))).ToValueList();

    /// <summary>The newest good map of every projector, whatever monitors are there: to be shown, not to be drawn with.</summary>
    public ValueList<MapLoad> Newest() => NewestOf(null);

    /// <summary>Goes back to the map before the newest one, which is put aside.</summary>
    /// <param name="place">Which projector.</param>
    public MapStored Undo(MapPlace place)
    {
        try
        {
            var versions = Versions(place);
            var back = versions.Skip(1).FirstOrDefault(version => Read(version).Value is not null);
            if (back is null)
            {
                return new MapStored(null, $"the projector \"{place.Projector}\" of station {place.Station} has no earlier map to go back to: calibrate it again");
            }

            PutAside([.. versions.TakeWhile(version => version != back)]);
            return new MapStored(back.File, "");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new MapStored(null, $"{folder}: the earlier map was not taken back. See that the folder can be written to. (The system says: {exception.Message})");
        }
    }

    private ValueList<MapLoad> NewestOf(int? station)
    {
        try
        {
            return All().Select(version => version.Place).Distinct().Where(place => station is null || place.Station == station)
                .OrderBy(place => place.Station).ThenBy(place => place.Projector, StringComparer.Ordinal).Select(Newest).ToValueList();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return [new MapLoad(new MapPlace(station ?? 1, MapPlace.OnlyProjector), null, null, CannotBeRead(exception), [])];
        }
    }

    private MapLoad Newest(MapPlace place)
    {
        var broken = new List<FileProblem>();
        try
        {
            foreach (var version in Versions(place))
            {
                var read = Read(version);
                if (read.Value is { } map)
                {
                    var saved = map.SavedAt is { } at ? FormattableString.Invariant($", of {at:yyyy-MM-dd HH:mm} UTC") : "";
                    return new MapLoad(place, map, version.File, broken.Count == 0 ? "" : $"a newer map cannot be read, so the last good one is used{saved}", broken.ToValueList());
                }

                broken.AddRange(read.Problems);
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new MapLoad(place, null, null, CannotBeRead(exception), broken.ToValueList());
        }

        var why = broken.Count == 0
            ? $"the projector \"{place.Projector}\" of station {place.Station} is not calibrated yet: calibrate it"
            : $"no map of the projector \"{place.Projector}\" of station {place.Station} can be read: correct the file, or calibrate again";
        return new MapLoad(place, null, null, why, broken.ToValueList());
    }

    private static MapLoad Judged(MapLoad newest, MonitorMode? now)
    {
        if (newest.Map?.Monitor is not { } fitted || fitted == now)
        {
            return newest;
        }

        if (now is null)
        {
            return newest with
            {
                Map = null,
                Why = $"the map of the projector \"{newest.Place.Projector}\" is for the monitor {fitted.Monitor}, which is not there: connect it, or calibrate the one that is",
            };
        }

        var what = fitted.Monitor != now.Monitor ? "another monitor" : fitted.Size != now.Size ? "another size of picture" : "another refresh rate";
        return newest with
        {
            Map = null,
            Why = $"the map of the projector \"{newest.Place.Projector}\" is not used: it is for {what} ({fitted}; now {now}). Set the monitor back, or calibrate again",
        };
    }

    private string CannotBeRead(Exception exception) => $"{folder}: the maps cannot be read: see that the folder can be read. (The system says: {exception.Message})";

    private static FileRead<SavedMap> Read(MapVersion version)
    {
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(version.File);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new FileRead<SavedMap>(null, [new FileProblem(version.File, 0, "", $"a file that cannot be read ({exception.Message})", "a map that can be read")]);
        }

        var read = MapFileReader.Read(version.File, bytes);
        return read.Value switch
        {
            null => read,
            { Monitor: null } => Wrong(version, "$.monitor", "no \"monitor\"", "the monitor and mode that the map is for"),
            { Place: var place } when place != version.Place => Wrong(
                version, "$.station", place is null ? "no \"station\"" : $"station {place.Station}, projector \"{place.Projector}\"",
                "the station and projector that the name of the file says"),
            _ => read,
        };
    }

    private static FileRead<SavedMap> Wrong(MapVersion version, string path, string found, string allowed) => new(null, [new FileProblem(version.File, 1, path, found, allowed)]);

    /// <summary>The versions of a projector, the newest first.</summary>
    private List<MapVersion> Versions(MapPlace place) => [.. All().Where(version => version.Place == place).OrderByDescending(version => version.Number)];

    private IEnumerable<MapVersion> All() =>
        Directory.Exists(folder) ? Directory.EnumerateFiles(folder, "*.json").Select(MapVersion.Of).OfType<MapVersion>() : [];

    private int HighestUndone(MapPlace place) => Undone(place).Select(version => version.Number).DefaultIfEmpty().Max();

    /// <summary>The versions of a projector that were gone back from, by the names they had.</summary>
    private IEnumerable<MapVersion> Undone(MapPlace place) => Directory.EnumerateFiles(folder, "*" + MapVersion.Undone)
        .Select(file => MapVersion.Of(file[..^MapVersion.Undone.Length])).OfType<MapVersion>().Where(version => version.Place == place);

    /// <summary>Puts versions aside; of all that were put aside, as many are kept as of maps that hold.</summary>
    private void PutAside(IReadOnlyList<MapVersion> versions)
    {
        foreach (var version in versions)
        {
            File.Move(version.File, version.File + MapVersion.Undone, overwrite: true);
        }

        foreach (var place in versions.Select(version => version.Place).Distinct())
        {
            foreach (var old in Undone(place).OrderByDescending(version => version.Number).Skip(Kept).ToList())
            {
                Remove(old.File + MapVersion.Undone);
            }
        }
    }

    /// <summary>Takes away what a save that was cut off has left.</summary>
    private static void ForgetUnfinished(string beginning)
    {
        foreach (var file in Directory.EnumerateFiles(Path.GetDirectoryName(beginning)!, Path.GetFileName(beginning) + "*" + MapVersion.Unfinished))
        {
            Remove(file);
        }
    }

    private static void Remove(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // What is left over harms nobody: its name says that it is old or unfinished.
        }
    }
}
