using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// What was erased, by ids alone: <c>erasures.jsonl</c> in the data folder, an object a line. It outlives the record, so that a copy that
/// is put back, and every other copy, can be told what must go.
/// </summary>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class Erasures(string dataFolder)
{
    private readonly string _file = Path.Combine(dataFolder, "erasures.jsonl");

    /// <summary>Adds an erasure; it is on the disk when this returns.</summary>
    public void Add(Erased erased)
    {
        var line = Encoding.UTF8.GetBytes(JsonSerializer.Serialize(erased with { CopiesLeft = [] }, DomainJson.Options) + "\n");
        using var stream = new FileStream(_file, FileMode.Append, FileAccess.Write);
        stream.Write(line);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>All erasures, oldest first. A last line that a power cut tore is left out.</summary>
    public IReadOnlyList<Erased> All()
    {
        if (!File.Exists(_file))
        {
            return [];
        }

        var erased = new List<Erased>();
        foreach (var line in File.ReadLines(_file))
        {
            try
            {
                erased.Add(JsonSerializer.Deserialize<Erased>(line, DomainJson.Options)!);
            }
            catch (JsonException)
            {
                continue;
            }
        }

        return erased;
    }
}
