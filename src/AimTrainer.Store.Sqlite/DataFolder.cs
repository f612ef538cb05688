using System.Globalization;
using AimTrainer.Sessions;

namespace AimTrainer.Store.Sqlite;

/// <summary>The folder that the record lies in. One process at a time holds it; others may read beside it.</summary>
public sealed class DataFolder : IDisposable
{
    private const string DatabaseName = "aimtrainer.db";
    private const string LockName = "aimtrainer.lock";
    private const string HolderName = "aimtrainer.pid";

    private readonly FileStream? _lock;

    private DataFolder(string path, FileStream? held)
    {
        FolderPath = path;
        _lock = held;
    }

    /// <summary>The folder, as a full path.</summary>
    public string FolderPath { get; }

    /// <summary>Whether this process holds the folder, and so may write.</summary>
    public bool IsHeld => _lock is not null;

    /// <summary>The database in it.</summary>
    public string DatabaseFile => Path.Combine(FolderPath, DatabaseName);

    /// <summary>Whether there is a record in it already.</summary>
    public bool HasRecord => File.Exists(DatabaseFile);

    /// <summary>
    /// Where the record lies unless a person says otherwise: <c>$XDG_DATA_HOME/aimtrainer</c> or
    /// <c>~/.local/share/aimtrainer</c> on Linux, <c>~/Library/Application Support/AimTrainer</c> on macOS,
    /// <c>%LOCALAPPDATA%\AimTrainer</c> on Windows.
    /// </summary>
    /// <exception cref="StoreUnavailableException">The system names no home folder.</exception>
    public static string UsualPlace()
    {
        if (OperatingSystem.IsWindows())
        {
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "AimTrainer");
        }

        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        return OperatingSystem.IsMacOS()
            ? Path.Combine(Home(home), "Library", "Application Support", "AimTrainer")
            : UsualPlaceOnLinux(Environment.GetEnvironmentVariable("XDG_DATA_HOME"), home);
    }

    /// <summary>Takes the folder for this process until it is disposed of, or the process ends in whatever way.</summary>
    /// <param name="directory">The folder, made when it is missing; null takes <see cref="UsualPlace"/>.</param>
    /// <exception cref="StoreUnavailableException">Another process holds it, or it cannot be made or written to.</exception>
    public static DataFolder Open(string? directory = null)
    {
        var path = Path.GetFullPath(directory ?? UsualPlace());
        var lockFile = Path.Combine(path, LockName);
        try
        {
            Directory.CreateDirectory(path);

            // The system drops this lock when the process ends, also when it is killed: the file may stay, a lock cannot.
            var held = new FileStream(lockFile, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            NoteHolder(path);
            return new DataFolder(path, held);
        }
        catch (IOException exception) when (IsHeldElsewhere(exception))
        {
            throw new StoreUnavailableException(
                $"{path} is in use by another aimtrainer{HolderOf(path)}. Close that one, or use another data folder (--data DIR)", exception);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException(
                $"{path}: this folder cannot be used for data. See that it can be made and written to, or use another one (--data DIR). "
                + $"(The system says: {exception.Message})", exception);
        }
    }

    /// <summary>The folder for reading only. Takes no lock, so that a list can be shown while a session runs.</summary>
    /// <param name="directory">The folder; null takes <see cref="UsualPlace"/>. It need not exist (<see cref="HasRecord"/>).</param>
    public static DataFolder OpenForReading(string? directory = null) => new(Path.GetFullPath(directory ?? UsualPlace()), null);

    /// <summary>Lets the folder go.</summary>
    public void Dispose() => _lock?.Dispose();

    internal static string UsualPlaceOnLinux(string? xdgDataHome, string home) =>
        Path.Combine(
            // The convention says that a relative path is to be ignored.
            Path.IsPathRooted(xdgDataHome) ? xdgDataHome : Path.Combine(Home(home), ".local", "share"), "aimtrainer");

    private static string Home(string home) =>
        home.Length > 0 ? home : throw new StoreUnavailableException("this user has no home folder; say where data should lie (--data DIR)");

    /// <summary>Writes who holds the folder, in a file of its own: a locked file cannot be read.</summary>
    private static void NoteHolder(string path)
    {
        try
        {
            File.WriteAllText(Path.Combine(path, HolderName), Environment.ProcessId.ToString(CultureInfo.InvariantCulture));
        }
        catch (IOException)
        {
            // Only a kindness to whoever comes second: on a full disk the lock holds all the same.
        }
    }

    private static string HolderOf(string path)
    {
        try
        {
            var text = File.ReadAllText(Path.Combine(path, HolderName));
            return int.TryParse(text, CultureInfo.InvariantCulture, out var pid) ? FormattableString.Invariant($" (process {pid})") : "";
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private static bool IsHeldElsewhere(IOException exception)
    {
        const int SharingViolation = unchecked((int)0x80070020), WouldBlockOnLinux = 11, WouldBlockOnMac = 35;
        return exception.HResult
            == (OperatingSystem.IsWindows() ? SharingViolation : OperatingSystem.IsMacOS() ? WouldBlockOnMac : WouldBlockOnLinux);
    }
}
