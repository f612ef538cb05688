using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What was agreed with bowlers about names and minors, and how long sessions are kept: <c>people.json</c> in the data folder, readable by its owner alone.</summary>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class PeopleRegister(string dataFolder) : IScreenNames
{
    /// <summary>Longest time that can be set, months.</summary>
    public const int MostMonths = 240;

    /// <summary>The file in the data folder.</summary>
    public const string FileName = "people.json";

    private readonly string _file = Path.Combine(dataFolder, FileName);
    private readonly Lock _lock = new();
    private PeopleFile? _read;

    /// <summary>Everything in it.</summary>
    /// <exception cref="StoreUnavailableException">The file cannot be read.</exception>
    public PeopleFile All
    {
        get
        {
            lock (_lock)
            {
                return _read ??= Read();
            }
        }
    }

    /// <inheritdoc/>
    public string Of(string bowler)
    {
        try
        {
            return ScreenName.Of(bowler, Find(bowler));
        }
        catch (StoreUnavailableException)
        {
            // What was agreed cannot be looked up: then what may be shown without asking.
            return ScreenName.Initials(bowler);
        }
    }

    /// <summary>What was agreed with a bowler; null when nothing was.</summary>
    public BowlerConsent? Find(string bowler) => All.Bowlers.AsEnumerable().FirstOrDefault(one => BowlerName.Same(one.Bowler, bowler));

    /// <summary>Keeps what was agreed, in the place of what was there.</summary>
    /// <exception cref="StoreUnavailableException">It cannot be kept; what was there still is.</exception>
    public void Save(BowlerConsent consent) => Change(all => all with
    {
        Bowlers = all.Bowlers.AsEnumerable().Where(one => !BowlerName.Same(one.Bowler, consent.Bowler)).Append(consent)
            .OrderBy(one => one.Bowler, StringComparer.OrdinalIgnoreCase).ToValueList(),
    });

    /// <summary>Nothing is known of a bowler any more.</summary>
    public void Remove(string bowler) => Change(all => all with { Bowlers = all.Bowlers.AsEnumerable().Where(one => !BowlerName.Same(one.Bowler, bowler)).ToValueList() });

    /// <summary>Sets how long sessions are kept.</summary>
    /// <param name="months">1 to <see cref="MostMonths"/>; null for ever.</param>
    public void KeepFor(int? months)
    {
        if (months is { } count)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostMonths);
        }

        Change(all => all with { KeepMonths = months });
    }

    private void Change(Func<PeopleFile, PeopleFile> change)
    {
        lock (_lock)
        {
            var changed = change(_read ?? Read());
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

    private PeopleFile Read()
    {
        try
        {
            return File.Exists(_file) ? JsonSerializer.Deserialize<PeopleFile>(File.ReadAllBytes(_file), DomainJson.Options) ?? new PeopleFile() : new PeopleFile();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new StoreUnavailableException($"{_file}: cannot be read ({exception.Message.TrimEnd('.')}). Mend it, or put back a copy; names are shown as initials until then", exception);
        }
    }
}
