using System.Globalization;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Doctor;

/// <summary>Looks at the data folder, the disk and the record; for a moment it writes a file there and holds the folder.</summary>
/// <param name="place">The data folder.</param>
/// <param name="clock">The time.</param>
/// <param name="database">Whether the record is in a database, which <see cref="DatabaseDoctor"/> looks at; else it is a file in the folder.</param>
internal sealed class DataDoctor(string place, TimeProvider clock, bool database = false)
{
    private const long FailBelowMiB = 256, WarnBelowMiB = 2048;

    /// <summary>Another clock would be noticed: records from tomorrow.</summary>
    private static readonly TimeSpan Tolerance = TimeSpan.FromMinutes(10);

    /// <summary>Room on the disk of a folder, bytes; another for tests.</summary>
    public Func<string, long> FreeBytes { get; init; } = folder => new DriveInfo(folder).AvailableFreeSpace;

    /// <summary>Whether another aimtrainer holds the folder: then what it listens on is taken, and rightly.</summary>
    public bool IsHeld { get; private set; }

    /// <summary>When the newest session of the record began; null when that is not known.</summary>
    public DateTimeOffset? NewestSession { get; set; }

    public IEnumerable<DoctorLine> Look()
    {
        if (!Directory.Exists(place))
        {
            yield return DoctorLine.Warn("data folder", $"{place} is not there yet", "nothing: the first start makes it; or name another with --data DIR");
            yield break;
        }

        yield return Writable();
        yield return Room();
        yield return Holder();
        if (!database)
        {
            yield return Record();
        }

        var stop = new ProjectionStopFile(place).Read();
        yield return stop.Stopped
            ? DoctorLine.Warn("emergency stop", $"all projection is stopped{(stop.By is { } by ? $" by {by}" : "")}", "release it in the console, or with: aimtrainer stop --release, when nobody is on a lane")
            : DoctorLine.Ok("emergency stop", "not stopped");
    }

    private DoctorLine Writable()
    {
        try
        {
            using var stream = new FileStream(
                Path.Combine(place, $"doctor.{Guid.NewGuid():n}.tmp"), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            stream.WriteByte(1);
            stream.Flush(flushToDisk: true);
            return DoctorLine.Ok("data folder", $"{place} can be written to");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return DoctorLine.Fail("data folder", $"{place} cannot be written to ({exception.Message.TrimEnd('.')})", "give its user the right to write there, or name another with --data DIR");
        }
    }

    private DoctorLine Room()
    {
        try
        {
            var free = FreeBytes(place) >> 20;
            var found = string.Create(CultureInfo.InvariantCulture, $"{free} MiB free");
            return free < FailBelowMiB ? DoctorLine.Fail("disk", found, string.Create(CultureInfo.InvariantCulture, $"make room: below {FailBelowMiB} MiB the host says that it is not ready"))
                : free < WarnBelowMiB ? DoctorLine.Warn("disk", found, "make room before the next busy week")
                : DoctorLine.Ok("disk", found);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return DoctorLine.Warn("disk", $"how much room there is cannot be told ({exception.Message.TrimEnd('.')})", "look at it by hand");
        }
    }

    private DoctorLine Holder()
    {
        try
        {
            DataFolder.Open(place).Dispose();
            return DoctorLine.Ok("in use", "no aimtrainer holds the folder now");
        }
        catch (StoreUnavailableException exception)
        {
            IsHeld = exception.Message.Contains("in use by another", StringComparison.Ordinal);
            return IsHeld ? DoctorLine.Ok("in use", "an aimtrainer runs on this folder") : DoctorLine.Fail("in use", exception.Message, "see the message");
        }
    }

    private DoctorLine Record()
    {
        using var folder = DataFolder.OpenForReading(place);
        if (!folder.HasRecord)
        {
            return DoctorLine.Ok("record", "none yet; the first start makes it");
        }

        try
        {
            var health = RecordHealth.Of(folder);
            NewestSession = health.NewestSession;
            return health.Damage.Count > 0
                ? DoctorLine.Fail("record", $"{folder.DatabaseFile} is damaged: {string.Join("; ", health.Damage)}", "stop the host, keep a copy of the folder, and put a backup in its place: aimtrainer restore FILE")
                : health.IsCurrent ? DoctorLine.Ok("record", $"{folder.DatabaseFile}: whole, tables of this version ({health.Version})")
                : DoctorLine.Warn("record", $"{folder.DatabaseFile}: whole, tables of an older version ({health.Version ?? "the first"})", "nothing: the next start of the host makes a copy beside it and updates it");
        }
        catch (StoreUnavailableException exception)
        {
            return DoctorLine.Fail("record", exception.Message, "use the program that made it, another data folder, or a backup (aimtrainer restore FILE)");
        }
    }

    /// <summary>Whether the time can be right.</summary>
    public DoctorLine Clock()
    {
        const int FirstYear = 2026, LastYear = 2100;
        var now = clock.GetLocalNow();
        var found = now.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture) + $" ({clock.LocalTimeZone.Id})";
        return now.Year is < FirstYear or > LastYear ? DoctorLine.Fail("clock", found, "set the clock, and let the system keep it by the network: records carry the time")
            : NewestSession is { } newest && newest > now + Tolerance
                ? DoctorLine.Fail("clock", $"{found}; the newest session began at {newest.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture)}, which is later", "set the clock right before the next session")
            : now.Offset == TimeSpan.Zero && clock.LocalTimeZone.Id is "UTC" or "Etc/UTC"
                ? DoctorLine.Warn("clock", found, "when this center is not at UTC, set the time zone: displays tell the time")
            : DoctorLine.Ok("clock", found);
    }
}
