namespace AimTrainer.Sessions;

/// <summary>
/// Names for screens by what was agreed, in a process that does not keep it: the file is read anew when another process has changed it.
/// For one thread at a time.
/// </summary>
/// <param name="dataFolder">The folder of the record.</param>
public sealed class PeopleReader(string dataFolder) : IScreenNames
{
    private readonly FileInfo _file = new(Path.Combine(dataFolder, PeopleRegister.FileName));
    private PeopleRegister _people = new(dataFolder);
    private (DateTime WrittenAt, long Length) _read;

    /// <summary>Looks whether something else was agreed since the last look.</summary>
    /// <returns>Whether names may be others by now.</returns>
    public bool Look()
    {
        _file.Refresh();
        var now = _file.Exists ? (_file.LastWriteTimeUtc, _file.Length) : default;
        if (now == _read)
        {
            return false;
        }

        (_read, _people) = (now, new PeopleRegister(dataFolder));
        return true;
    }

    /// <inheritdoc/>
    public string Of(string bowler) => _people.Of(bowler);
}
