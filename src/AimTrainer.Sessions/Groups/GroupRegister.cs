using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>The groups of a center: <c>groups.json</c> in the data folder, readable by its owner alone.</summary>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class GroupRegister(string dataFolder)
{
    private readonly string _file = Path.Combine(dataFolder, "groups.json");
    private readonly Lock _lock = new();
    private ValueList<BowlerGroup>? _read;

    /// <summary>All groups, by name.</summary>
    /// <exception cref="StoreUnavailableException">The file cannot be read.</exception>
    public ValueList<BowlerGroup> All
    {
        get
        {
            lock (_lock)
            {
                return _read ??= Read();
            }
        }
    }

    /// <summary>A group by its id; null when there is none.</summary>
    public BowlerGroup? Find(string id) => All.AsEnumerable().FirstOrDefault(group => group.Id == id);

    /// <summary>An id for a new group of this name that no other group has.</summary>
    public string NewId(string name)
    {
        var letters = new StringBuilder();
        foreach (var letter in name.ToLowerInvariant())
        {
            letters.Append(char.IsAsciiLetterOrDigit(letter) ? letter : letters.Length > 0 && letters[^1] != '-' ? '-' : "");
        }

        var id = letters.ToString().Trim('-') is { Length: > 0 } made ? made : "group";
        var number = 1;
        while (Find(number == 1 ? id : $"{id}-{number}") is not null)
        {
            number++;
        }

        return number == 1 ? id : $"{id}-{number}";
    }

    /// <summary>Changes the groups, all or nothing.</summary>
    /// <param name="change">The groups as they are to be; null leaves them.</param>
    /// <exception cref="StoreUnavailableException">They cannot be kept; what was there still is.</exception>
    public void Change(Func<IEnumerable<BowlerGroup>, IEnumerable<BowlerGroup>> change)
    {
        lock (_lock)
        {
            var changed = change((_read ?? Read()).AsEnumerable()).OrderBy(group => group.Name, StringComparer.OrdinalIgnoreCase).ToValueList();
            try
            {
                Directory.CreateDirectory(dataFolder);
                PersonalFile.Write(_file, JsonSerializer.SerializeToUtf8Bytes(changed, DomainJson.Options));
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                throw new StoreUnavailableException($"{_file}: cannot be written ({exception.Message.TrimEnd('.')}); nothing was changed. See that the folder can be written to", exception);
            }

            _read = changed;
        }
    }

    /// <summary>Puts a group in the place of the one with its id, or adds it.</summary>
    public void Save(BowlerGroup group) => Change(all => all.Where(one => one.Id != group.Id).Append(group));

    /// <summary>A bowler is in no group any more.</summary>
    public void Remove(string bowler) => Change(all => all.Select(group => group with
    {
        Members = group.Members.AsEnumerable().Where(member => !BowlerName.Same(member.Bowler, bowler)).ToValueList(),
    }));

    private ValueList<BowlerGroup> Read()
    {
        try
        {
            return File.Exists(_file) ? JsonSerializer.Deserialize<ValueList<BowlerGroup>>(File.ReadAllBytes(_file), DomainJson.Options) ?? [] : [];
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new StoreUnavailableException($"{_file}: cannot be read ({exception.Message.TrimEnd('.')}). Mend it, or put back a copy", exception);
        }
    }
}
