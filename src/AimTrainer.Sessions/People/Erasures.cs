using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// What was erased, by ids alone: <c>erasures.jsonl</c> in the data folder, an object a line, only ever added to. It lies beside the
/// record and not in it, so that a copy that is put back does not bring back a person, and it knows what the chain has yet to be told.
/// </summary>
/// <remarks>Safe to use from many threads; one process at a time holds the folder. In one process there should be one of these a folder.</remarks>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class Erasures(string dataFolder)
{
    private readonly string _file = Path.Combine(dataFolder, "erasures.jsonl");
    private readonly Lock _lock = new();

    /// <summary>Notes that sessions go; on the disk when this returns.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be written.</exception>
    public void Add(string id, DateTimeOffset at, ValueList<string> sessions) => Append(new ErasureLine(ErasureLineKind.Erased, id, at, sessions));

    /// <summary>Notes that nothing of an erasure is left in the record here; on the disk when this returns.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be written.</exception>
    public void Finished(string id, DateTimeOffset at) => Append(new ErasureLine(ErasureLineKind.Finished, id, at, null));

    /// <summary>Notes that the chain confirmed an erasure; on the disk when this returns.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be written.</exception>
    public void ChainTold(string id, DateTimeOffset at) => Append(new ErasureLine(ErasureLineKind.ChainTold, id, at, null));

    /// <summary>
    /// All erasures, oldest first. A last line that a power cut tore is left out: what it was to note had not been done yet.
    /// </summary>
    /// <exception cref="StoreUnavailableException">
    /// The file cannot be read, or a line of it; the message names both. Nothing is passed over in silence: it could be a person.
    /// </exception>
    public IReadOnlyList<Erasure> All()
    {
        byte[] bytes;
        lock (_lock)
        {
            bytes = Read();
        }

        var erasures = new List<Erasure>();
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var rest = bytes.AsSpan(0, Whole(bytes));
        for (var number = 1; rest.Length > 0; number++)
        {
            var end = rest.IndexOf((byte)'\n');
            Take(Parse(rest[..end], number), number, erasures, places);
            rest = rest[(end + 1)..];
        }

        return erasures;
    }

    private void Take(ErasureLine line, int number, List<Erasure> erasures, Dictionary<string, int> places)
    {
        var (id, at) = (line.Id!, line.At!.Value);
        if (line.Kind == ErasureLineKind.Erased)
        {
            if (!places.TryAdd(id, erasures.Count))
            {
                throw Broken(number, $"$.id: found \"{id}\" a second time; allowed: an id of its own");
            }

            erasures.Add(new Erasure(id, at, line.Sessions!));
        }
        else if (places.TryGetValue(id, out var place))
        {
            erasures[place] = line.Kind == ErasureLineKind.Finished ? erasures[place] with { FinishedAt = at } : erasures[place] with { ChainToldAt = at };
        }
        else
        {
            throw Broken(number, $"$.id: found \"{id}\", which no line before it names; allowed: the id of a line of the kind \"erased\" above");
        }
    }

    private ErasureLine Parse(ReadOnlySpan<byte> text, int number)
    {
        ErasureLine? line;
        try
        {
            line = JsonSerializer.Deserialize<ErasureLine>(text, DomainJson.Options);
        }
        catch (JsonException exception)
        {
            throw Broken(number, $"{exception.Path ?? "$"}: found something else than this program writes there ({exception.Message.TrimEnd('.')})");
        }

        return line switch
        {
            null or { Kind: null } => throw Broken(number, "$.kind: found none; allowed: \"erased\", \"finished\", \"chainTold\""),
            { Id: null or "" } => throw Broken(number, "$.id: found none; allowed: the erasure's id"),
            { At: null } => throw Broken(number, "$.at: found none; allowed: a time"),
            { Kind: ErasureLineKind.Erased, Sessions: null } => throw Broken(number, "$.sessions: found none; allowed: a list of sessions' ids"),
            { Sessions: { } sessions } when sessions.AsEnumerable().Any(string.IsNullOrEmpty) => throw Broken(number, "$.sessions: found an empty id; allowed: sessions' ids"),
            _ => line,
        };
    }

    private StoreUnavailableException Broken(int number, string what) => new(FormattableString.Invariant(
        $"{_file}:{number}: {what}. Mend that line, or put back a copy of the file: it says which sessions must not come back")
        + ", so nothing is restored, erased again or sent to a chain until it can be read");

    private void Append(ErasureLine line)
    {
        lock (_lock)
        {
            try
            {
                Directory.CreateDirectory(dataFolder);
                var bytes = JsonSerializer.SerializeToUtf8Bytes(line, DomainJson.Options);
                var whole = Whole(Read());
                using var stream = new FileStream(_file, FileMode.OpenOrCreate, FileAccess.Write, FileShare.Read);

                // What a power cut left of a line would otherwise become the beginning of this one.
                stream.SetLength(whole);
                stream.Position = whole;
                stream.Write([.. bytes, (byte)'\n']);
                stream.Flush(flushToDisk: true);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                throw new StoreUnavailableException(
                    $"{_file}: cannot be written. See that the folder can be written to and the disk has room, then try again. (The system says: {exception.Message.TrimEnd('.')})",
                    exception);
            }
        }
    }

    private byte[] Read()
    {
        try
        {
            return File.Exists(_file) ? File.ReadAllBytes(_file) : [];
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException($"{_file}: cannot be read. See that it may be read here. (The system says: {exception.Message.TrimEnd('.')})", exception);
        }
    }

    /// <summary>How many bytes are whole lines. A torn line has no end, or, where the disk wrote its end first, zeros in the place of the rest.</summary>
    private static int Whole(ReadOnlySpan<byte> bytes)
    {
        var whole = bytes.LastIndexOf((byte)'\n') + 1;
        if (whole == 0)
        {
            return 0;
        }

        var lastBegins = bytes[..(whole - 1)].LastIndexOf((byte)'\n') + 1;
        return whole == bytes.Length && bytes[lastBegins..whole].Contains((byte)0) ? lastBegins : whole;
    }
}
