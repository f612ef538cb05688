using System.Diagnostics;

namespace AimTrainer.Faults.Tests;

/// <summary>A kill while the record is copied away or put back leaves whole records only.</summary>
public sealed class BackupKillTests
{
    private const int Seed = 20261126;

    [Fact]
    public async Task Backup_KilledAtRandomMoments_LeavesAWholeBackupOrNoneAndTheRecordAsItWas()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        var (data, backup, restored) = (folder.File("data"), folder.File("backup.db"), folder.File("restored"));
        var record = await MakeRecordAsync(folder, data, "Whole", stop);
        var (chance, kills, whole) = (new Random(Seed), Figures.Count("COPY_KILLS", usually: 4), 0);
        var usual = await TimeOfAsync(folder.Path, stop, "backup", folder.File("first.db"), "--data", data);

        for (var i = 0; i < kills; i++)
        {
            await KillWhileCopyingAsync(folder.Path, usual * (chance.NextDouble() * 1.1), stop, "backup", backup, "--data", data);
            Assert.Equal(record, await ShownAsync(data, stop));
            if (File.Exists(backup))
            {
                whole++;
                (await TheProgram.RunAsync(stop, "restore", backup, "--data", restored)).Good();
                Assert.Equal(record, await ShownAsync(restored, stop));
                File.Delete(backup);
            }
        }

        (await TheProgram.RunAsync(stop, "backup", backup, "--data", data)).Good();
        Figures.Say($"kills in backup: {kills}; {whole} left a whole backup, {kills - whole} none, 0 half a one; the record stayed as it was each time");
    }

    [Fact]
    public async Task Restore_KilledAtRandomMoments_LeavesTheOldRecordOrTheNewOne()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        var (data, other, backup) = (folder.File("data"), folder.File("other"), folder.File("backup.db"));
        var old = await MakeRecordAsync(folder, data, "Old", stop);
        var fresh = await MakeRecordAsync(folder, other, "New", stop);
        var (oldBackup, chance, kills, replaced) = (folder.File("old.db"), new Random(Seed), Figures.Count("COPY_KILLS", usually: 4), 0);
        (await TheProgram.RunAsync(stop, "backup", backup, "--data", other)).Good();
        (await TheProgram.RunAsync(stop, "backup", oldBackup, "--data", data)).Good();
        var usual = await TimeOfAsync(data, stop, "restore", oldBackup, "--data", data);

        for (var i = 0; i < kills; i++)
        {
            await KillWhileCopyingAsync(data, usual * (chance.NextDouble() * 1.1), stop, "restore", backup, "--data", data);
            var found = await ShownAsync(data, stop);
            Assert.True(found == old || found == fresh, $"neither the old record nor the new one: {found}");
            if (found == fresh)
            {
                replaced++;
                (await TheProgram.RunAsync(stop, "restore", oldBackup, "--data", data)).Good();
            }
        }

        (await TheProgram.RunAsync(stop, "restore", backup, "--data", data)).Good();
        Assert.Equal(fresh, await ShownAsync(data, stop));
        Figures.Say($"kills in restore: {kills}; {kills - replaced} left the old record, {replaced} the new one, 0 anything else");
    }

    private static async Task<string> MakeRecordAsync(TemporaryFolder folder, string data, string bowler, CancellationToken stop)
    {
        var (drill, shots) = (folder.File($"{bowler}.json"), new GrowingShots(folder.File($"{bowler}.csv"), bowler.Length));
        shots.GrowTo(MixedDrill.Write(drill, Figures.Count("COPY_SHOTS", usually: 100)));
        shots.Finish();
        (await TheProgram.RunAsync(stop, "shots", "import", shots.File, "--drill", drill, "--bowler", bowler, "--json", "--data", data)).Good();
        return await ShownAsync(data, stop);
    }

    private static async Task<string> ShownAsync(string data, CancellationToken stop) =>
        (await TheProgram.RunAsync(stop, "sessions", "show", "last", "--json", "--data", data)).Good().Text;

    /// <summary>How long an undisturbed run takes from its first file on.</summary>
    private static async Task<TimeSpan> TimeOfAsync(string folder, CancellationToken stop, params string[] arguments)
    {
        using var copying = new CopyBegins(folder);
        using var program = TheProgram.Start([], arguments);
        await copying.WaitAsync(stop);
        var watch = Stopwatch.StartNew();
        (await program.EndAsync([])).Good();
        return watch.Elapsed;
    }

    private static async Task KillWhileCopyingAsync(string folder, TimeSpan delay, CancellationToken stop, params string[] arguments)
    {
        using var copying = new CopyBegins(folder);
        using var program = TheProgram.Start([], arguments);
        await copying.WaitAsync(stop);
        await program.KillAfterAsync(delay);
        var outcome = await program.EndAsync([]);
        Assert.True(outcome.ExitCode is 137 or 0, $"exit {outcome.ExitCode}: {outcome.Error}");
    }

    /// <summary>Tells when the first file of a copy stands in a folder.</summary>
    private sealed class CopyBegins : IDisposable
    {
        private readonly TaskCompletionSource _begun = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly FileSystemWatcher _watcher;

        public CopyBegins(string folder)
        {
            _watcher = new FileSystemWatcher(folder, "*.part");
            _watcher.Created += (_, _) => _begun.TrySetResult();
            _watcher.EnableRaisingEvents = true;
        }

        public Task WaitAsync(CancellationToken stop) => _begun.Task.WaitAsync(TimeSpan.FromMinutes(2), stop);

        public void Dispose() => _watcher.Dispose();
    }
}
