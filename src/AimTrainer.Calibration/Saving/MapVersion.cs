using System.Globalization;

namespace AimTrainer.Calibration;

/// <summary>The name of a map's file: <c>station-3.near.0007.json</c>. The highest number holds; a save only ever adds one.</summary>
internal sealed record MapVersion(MapPlace Place, int Number, string File)
{
    private const string Station = "station-";
    private const string Ending = ".json";

    /// <summary>Added to the name of a file that was gone back from.</summary>
    public const string Undone = ".undone";

    /// <summary>Added to the name of a file that is being written.</summary>
    public const string Unfinished = ".unfinished";

    public static string NameOf(MapPlace place, int number) => string.Create(CultureInfo.InvariantCulture, $"{Station}{place.Station}.{place.Projector}.{number:0000}{Ending}");

    /// <summary>The version that a file holds by its name; null for any other file.</summary>
    public static MapVersion? Of(string file)
    {
        var parts = Path.GetFileName(file).Split('.');
        return parts is [var station, var projector, var number, "json"]
            && station.StartsWith(Station, StringComparison.Ordinal)
            && int.TryParse(station.AsSpan(Station.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var lane)
            && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var version)
            && new MapPlace(lane, projector) is { Problem: null } place
            ? new MapVersion(place, version, file)
            : null;
    }
}
