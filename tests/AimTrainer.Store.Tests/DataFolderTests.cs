using System.Diagnostics;
using System.Globalization;
using AimTrainer.Sessions;
using AimTrainer.Store.Sqlite;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public sealed class DataFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Theory]
    [InlineData("/data/home", "/home/ann", "/data/home/aimtrainer")]
    [InlineData(null, "/home/ann", "/home/ann/.local/share/aimtrainer")]
    [InlineData("", "/home/ann", "/home/ann/.local/share/aimtrainer")]
    [InlineData("not/absolute", "/home/ann", "/home/ann/.local/share/aimtrainer")]
    [InlineData("/data/home", "", "/data/home/aimtrainer")]
    public void UsualPlaceOnLinux_Case_FollowsTheConvention(string? xdgDataHome, string home, string expected)
    {
        // Source: XDG Base Directory Specification 0.8: a relative path is to be ignored; the default is ~/.local/share.
        Assert.SkipWhen(OperatingSystem.IsWindows(), "paths of Linux");
        Assert.Equal(expected, DataFolder.UsualPlaceOnLinux(xdgDataHome, home));
    }

    [Fact]
    public void UsualPlaceOnLinux_NoHome_SaysWhatToDo()
    {
        var refused = Assert.Throws<StoreUnavailableException>(() => DataFolder.UsualPlaceOnLinux(null, ""));
        Assert.Contains("--data DIR", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_MissingFolder_MakesIt()
    {
        using var folder = DataFolder.Open(_folder.File("a/b"));
        Assert.True(Directory.Exists(_folder.File("a/b")));
        Assert.True(folder.IsHeld);
        Assert.False(folder.HasRecord);
    }

    [Fact]
    public void Open_TwiceInOneProcess_RefusesTheSecondAndSaysWhoHoldsIt()
    {
        using (DataFolder.Open(_folder.Path))
        {
            var refused = Assert.Throws<StoreUnavailableException>(() => DataFolder.Open(_folder.Path));
            Assert.Contains(_folder.Path, refused.Message, StringComparison.Ordinal);
            Assert.Contains($"(process {Environment.ProcessId.ToString(CultureInfo.InvariantCulture)})", refused.Message, StringComparison.Ordinal);
            Assert.Contains("--data DIR", refused.Message, StringComparison.Ordinal);
        }

        DataFolder.Open(_folder.Path).Dispose();
    }

    [Fact]
    public void Open_LockAndNameLeftByADeadProcess_IsNoObstacle()
    {
        File.WriteAllText(_folder.File("aimtrainer.lock"), "");
        File.WriteAllText(_folder.File("aimtrainer.pid"), "1");
        DataFolder.Open(_folder.Path).Dispose();
        Assert.Equal(Environment.ProcessId.ToString(CultureInfo.InvariantCulture), File.ReadAllText(_folder.File("aimtrainer.pid")));
    }

    [Fact]
    public async Task Open_HeldByAnotherProcess_IsRefusedUntilThatOneIsKilled()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && File.Exists("/usr/bin/flock"), "needs the flock command");
        DataFolder.Open(_folder.Path).Dispose();
        File.WriteAllText(_folder.File("aimtrainer.pid"), "not a number");

        // The other process takes the very lock that DataFolder takes, says so, and then waits to be killed.
        using var other = Process.Start(new ProcessStartInfo(
            "/usr/bin/flock", ["--no-fork", _folder.File("aimtrainer.lock"), "sh", "-c", "echo held; exec cat"])
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
        })!;
        try
        {
            Assert.Equal("held", await other.StandardOutput.ReadLineAsync(Cancel));
            var refused = Assert.Throws<StoreUnavailableException>(() => DataFolder.Open(_folder.Path));
            Assert.Contains("in use by another aimtrainer. Close", refused.Message, StringComparison.Ordinal);
        }
        finally
        {
            other.Kill();
            await other.WaitForExitAsync(Cancel);
        }

        DataFolder.Open(_folder.Path).Dispose();
    }

    [Fact]
    public void Open_PathOfAFile_SaysWhatToDo()
    {
        File.WriteAllText(_folder.File("file"), "");
        foreach (var path in (string[])[_folder.File("file"), _folder.File("file/below")])
        {
            var refused = Assert.Throws<StoreUnavailableException>(() => DataFolder.Open(path));
            Assert.Contains(path, refused.Message, StringComparison.Ordinal);
            Assert.Contains("--data DIR", refused.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Open_PlaceWhereNothingCanBeMade_SaysWhatToDo()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs /proc");
        var refused = Assert.Throws<StoreUnavailableException>(() => DataFolder.Open("/proc/aimtrainer"));
        Assert.Contains("/proc/aimtrainer", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OpenForReading_BesideAHolder_ReadsWhatIsKeptAndCannotWrite()
    {
        using var record = new OpenRecord(_folder.Path);
        await KeepAsync(record.Store, Setup(), Shot());

        using var folder = DataFolder.OpenForReading(_folder.Path);
        Assert.True(folder.HasRecord);
        using var reader = SqliteSessionStore.Open(folder);
        Assert.Equal(1, Assert.Single(await reader.ListAsync(new SessionFilter(), Cancel)).Shots);

        await record.Store.AppendAsync("s1", Thrown(3, Graded(2, Shot())), Cancel);
        Assert.Equal(2, Assert.Single(await reader.ListAsync(new SessionFilter(), Cancel)).Shots);
        await Assert.ThrowsAsync<InvalidOperationException>(() => reader.AppendAsync("s1", Noted(4), Cancel));
        await Assert.ThrowsAsync<InvalidOperationException>(() => reader.CreateAsync(Setup("s2"), Drill(), Cancel));
    }

    [Fact]
    public async Task OpenForReading_NobodyHoldsIt_ReadsAlsoWhatIsStillInTheLog()
    {
        using var copy = new TemporaryFolder();
        using (var record = new OpenRecord(_folder.Path))
        {
            await KeepAsync(record.Store, Setup(), Shot());
            File.Copy(_folder.File("aimtrainer.db"), copy.File("aimtrainer.db"));
            File.Copy(_folder.File("aimtrainer.db-wal"), copy.File("aimtrainer.db-wal"));
        }

        foreach (var path in (string[])[_folder.Path, copy.Path])
        {
            using var reader = SqliteSessionStore.Open(DataFolder.OpenForReading(path));
            Assert.Equal(2, (await LogAsync(reader, "s1")).Count);
        }
    }

    [Fact]
    public void OpenForReading_NoRecord_SaysSoAndMakesNothing()
    {
        var missing = _folder.File("missing");
        using var folder = DataFolder.OpenForReading(missing);
        Assert.False(folder.HasRecord);
        var refused = Assert.Throws<StoreUnavailableException>(() => SqliteSessionStore.Open(folder));
        Assert.Contains("aimtrainer demo", refused.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(missing));
    }

    public void Dispose() => _folder.Dispose();
}
