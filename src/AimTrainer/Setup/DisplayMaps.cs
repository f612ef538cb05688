using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Which map a projector's window is drawn by. Used on the thread that draws.</summary>
/// <param name="dataFolder">The folder of the records, which holds the maps.</param>
/// <param name="station">Whose projectors.</param>
/// <param name="say">Told, once for each thing, why a map is not used or an older one is.</param>
internal sealed class DisplayMaps(string dataFolder, int station, Action<string> say)
{
    private const double FarEndFeet = 62, NearEndFeet = -1;

    /// <summary>How much of the picture's smaller side the lane's width takes up: wide enough to see a board by.</summary>
    private const double LaneWidthInPicture = 0.6;

    private readonly string _folder = Path.Combine(dataFolder, "maps");
    private (WindowPlace Place, PictureSize Size, DateTime Saved)? _asked;
    private MapChoice _choice = new(null, null);
    private string _said = "";
    private IReadOnlyList<LaneStretch> _others = [];

    /// <summary>Told what a person should know.</summary>
    public Action<string> Say => say;

    /// <summary>The same for another window: each remembers its own monitor.</summary>
    public DisplayMaps Another() => new(dataFolder, station, say);

    /// <summary>Whether another projector of the lane, by its saved map, draws a place.</summary>
    public bool OthersDraw(Feet distance) => _others.Any(stretch => distance >= stretch.From && distance <= stretch.To);

    /// <summary>
    /// For looking at, not for a lane: the whole lane upright in the middle of the picture, the foul line below, wider than it is to scale.
    /// </summary>
    public static ProjectorMap Straight(PictureSize size)
    {
        const double LaneInches = 41.5;
        var across = LaneWidthInPicture * Math.Min(size.Height, size.Width) / LaneInches;
        var along = size.Height / ((FarEndFeet - NearEndFeet) * 12);
        return new ProjectorMap
        {
            Picture = size,
            Homography = new Homography(
                -across, 0, (size.Width + (LaneInches * across)) / 2,
                0, -along, size.Height + (NearEndFeet * 12 * along),
                0, 0, 1),
            Stretch = new LaneStretch(Feet.FromFeet(NearEndFeet), Feet.FromFeet(FarEndFeet), Feet.FromFeet(0), Feet.FromFeet(0)),
        };
    }

    /// <summary>A map that a user names.</summary>
    /// <returns>The map; null when none is named.</returns>
    /// <exception cref="UserException">It has mistakes, or cannot be drawn by: each is named.</exception>
    public static ProjectorMap? Read(string? file)
    {
        if (file is null)
        {
            return null;
        }

        var read = MapFileReader.Read(file, UserFiles.ReadAllBytes(file));
        var map = (read.Value ?? throw UserException.Of(read.Problems)).Map;
        return MapCheck.ProblemOf(map) is { } problem ? throw new UserException($"{file}: {problem}") : map;
    }

    /// <summary>For a window the straight map, to look at it; on a monitor of its own only a map that was made for this monitor and mode.</summary>
    public MapChoice For(WindowPlace place, PictureSize size)
    {
        // A save is a new file in the folder, so its time tells whether to look again; where there is no folder it is some constant.
        var asked = (place, size, Directory.GetLastWriteTimeUtc(_folder));
        if (_asked != asked)
        {
            _asked = asked;
            _choice = place switch
            {
                { Borderless: true, Monitor: { } monitor } => Stored(new MonitorMode(monitor.NameForMaps, monitor.Mode, monitor.RefreshHertz)),
                { Missing: { } missing } => new MapChoice(null, $"Monitor {missing} is away, and this window has no map."),
                _ => new MapChoice(Straight(size), null),
            };
        }

        return _choice;
    }

    private MapChoice Stored(MonitorMode monitor)
    {
        var store = new MapStore(_folder, TimeProvider.System);
        var loads = store.LoadAll(station, [monitor]);
        var load = loads.AsEnumerable().FirstOrDefault(load => load.Map is not null) ?? loads.AsEnumerable().FirstOrDefault();
        _others = [.. store.Newest().AsEnumerable().Where(other => other.Place.Station == station && other.Place != load?.Place)
            .Select(other => other.Map?.Map.Stretch).OfType<LaneStretch>()];
        var said = load is null
            ? $"no map for {monitor}: the projector shows no target until it is calibrated (aimtrainer calibrate)"
            : string.Join(Environment.NewLine, load.Broken.AsEnumerable().Select(problem => problem.ToString()).Append(load.Why).Where(text => text.Length > 0));
        if (said != _said && said.Length > 0)
        {
            say(said);
        }

        _said = said;
        return new MapChoice(load?.Map?.Map, load is { Map: null } ? "The map of this projector is not used: see the console." : null)
        {
            LaneWidth = load?.Map?.LaneWidth,
        };
    }
}
