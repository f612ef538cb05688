using System.Globalization;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>The order of each lane as a small file: <c>lanes/lane-7.json</c> in the data folder. One process writes, others may read.</summary>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class LineupFiles(string dataFolder) : ILineupKeeper
{
    private readonly string _folder = Path.Combine(dataFolder, "lanes");

    /// <inheritdoc/>
    public void Keep(Lineup lineup, bool durable)
    {
        var file = FileOf(lineup.Station);
        Try(file, () =>
        {
            Directory.CreateDirectory(_folder);
            PersonalFile.Write(file, JsonSerializer.SerializeToUtf8Bytes(lineup, DomainJson.Options), durable);
            return true;
        });
    }

    /// <inheritdoc/>
    public Lineup? Find(int station)
    {
        var file = FileOf(station);
        return Try(file, () => File.Exists(file) ? JsonSerializer.Deserialize<Lineup>(File.ReadAllBytes(file), DomainJson.Options) : null);
    }

    /// <inheritdoc/>
    public void Drop(int station)
    {
        var file = FileOf(station);
        Try(file, () =>
        {
            File.Delete(file);
            return true;
        });
    }

    /// <summary>All orders that are kept.</summary>
    /// <exception cref="StoreUnavailableException">One cannot be read.</exception>
    public IReadOnlyList<Lineup> All() =>
        Directory.Exists(_folder)
            ? [.. Directory.EnumerateFiles(_folder, "lane-*.json").Order(StringComparer.Ordinal)
                .Select(file => int.TryParse(Path.GetFileNameWithoutExtension(file)[5..], NumberStyles.None, CultureInfo.InvariantCulture, out var station) ? Find(station) : null)
                .OfType<Lineup>()]
            : [];

    private string FileOf(int station) => Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"lane-{station}.json"));

    private static T Try<T>(string file, Func<T> act)
    {
        try
        {
            return act();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new StoreUnavailableException(
                $"{file}: the order of this lane cannot be kept or read ({exception.Message.TrimEnd('.')}). See that the folder can be written to; a file that is broken may be deleted: "
                + "the sessions are in the record, only whose turn it was is in it", exception);
        }
    }
}
