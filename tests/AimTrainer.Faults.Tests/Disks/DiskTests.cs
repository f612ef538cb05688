namespace AimTrainer.Faults.Tests;

/// <summary>A disk that is full or read-only: said in words, nothing acknowledged, nothing broken.</summary>
public sealed class DiskTests
{
    private const int Seed = 11;
    private const int ShotsInDrill = 40;
    private const string FullWords = "the disk is full, so nothing more is kept. Free some space and try again";

    [Fact]
    public async Task Run_DiskFullsInTheMiddle_AcknowledgesNothingUntilThereIsRoomThenTakesEveryShot()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        await using var disk = await SmallDisk.MakeAsync(folder.File("disk"));
        var (drill, shots) = Prepared(folder);
        using var program = TheProgram.Start(disk.Inside, RunOf(drill, shots, disk.Data));
        var first = await program.ShotAsync(stop);

        await disk.FillAsync();
        shots.GrowTo(ShotsInDrill);
        shots.Finish();
        var before = await UntilFullAsync(program, first.Sequence, stop);
        await disk.FreeAsync();
        var after = await RestAsync(program, stop);

        // Nothing was acknowledged while the disk was full: the steps go on without a gap, and every shot is there in the end.
        Assert.Equal(before + 1, after.Steps[0].Sequence);
        Assert.Equal(0, after.Outcome.ExitCode);
        Assert.Equal(await UninterruptedAsync(folder, drill, shots, stop), await ShownAsync(disk, stop));
    }

    [Fact]
    public async Task Run_KilledWhileTheDiskIsFull_GoesOnFromTheLastAcknowledgedShot()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        await using var disk = await SmallDisk.MakeAsync(folder.File("disk"));
        var (drill, shots) = Prepared(folder);
        long last;
        using (var program = TheProgram.Start(disk.Inside, RunOf(drill, shots, disk.Data)))
        {
            var first = await program.ShotAsync(stop);
            await disk.FillAsync();
            shots.GrowTo(ShotsInDrill);
            shots.Finish();
            last = await UntilFullAsync(program, first.Sequence, stop);
            program.Kill();
        }

        await disk.FreeAsync();
        using var again = TheProgram.Start(disk.Inside, ["run", "--json", "--go-on", "--follow", shots.File, "--data", disk.Data]);
        var rest = await RestAsync(again, stop);

        Assert.Equal(0, rest.Outcome.ExitCode);
        Assert.Equal(last + 1, rest.Steps[0].Sequence);
        Assert.Equal(await UninterruptedAsync(folder, drill, shots, stop), await ShownAsync(disk, stop));
    }

    [Fact]
    public async Task Commands_DiskFullFromTheStart_FailInWordsAndLeaveTheRecordAsItWas()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        await using var disk = await SmallDisk.MakeAsync(folder.File("disk"));
        var (drill, shots) = Prepared(folder);
        shots.GrowTo(ShotsInDrill);
        shots.Finish();
        (await TheProgram.RunAsync(disk.Inside, stop, RunOf(drill, shots, disk.Data))).Good();
        var record = await ShownAsync(disk, stop);

        await disk.FillAsync();

        (await TheProgram.RunAsync(disk.Inside, stop, RunOf(drill, shots, disk.Data))).FailedSaying(FullWords);
        (await TheProgram.RunAsync(disk.Inside, stop, RunOf(drill, shots, disk.Data + "-new"))).FailedSaying(FullWords);
        (await TheProgram.RunAsync(disk.Inside, stop, "backup", Path.Combine(disk.Data, "copy.db"), "--data", disk.Data)).FailedSaying(FullWords);
        await disk.FreeAsync();
        Assert.Equal(record, await ShownAsync(disk, stop));
        (await TheProgram.RunAsync(disk.Inside, stop, "backup", Path.Combine(disk.Data, "copy.db"), "--data", disk.Data)).Good();
    }

    [Fact]
    public async Task Commands_DataFolderReadOnly_FailInWordsAndLeaveTheRecordAsItWas()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        await using var disk = await SmallDisk.MakeAsync(folder.File("disk"));
        var (drill, shots) = Prepared(folder);
        shots.GrowTo(ShotsInDrill);
        shots.Finish();
        (await TheProgram.RunAsync(disk.Inside, stop, RunOf(drill, shots, disk.Data))).Good();
        (await TheProgram.RunAsync(disk.Inside, stop, "backup", folder.File("backup.db"), "--data", disk.Data)).Good();
        var record = await ShownAsync(disk, stop);

        await disk.MakeReadOnlyAsync();

        (await TheProgram.RunAsync(disk.Inside, stop, RunOf(drill, shots, disk.Data))).FailedSaying("cannot be used for data");
        (await TheProgram.RunAsync(disk.Inside, stop, RunOf(drill, shots, disk.Data + "-new"))).FailedSaying("cannot be used for data");
        (await TheProgram.RunAsync(disk.Inside, stop, "demo", "--once", "--data", disk.Data)).FailedSaying("cannot be used for data");
        (await TheProgram.RunAsync(disk.Inside, stop, "restore", folder.File("backup.db"), "--data", disk.Data)).FailedSaying("cannot be used for data");
        await disk.MakeWritableAsync();
        Assert.Equal(record, await ShownAsync(disk, stop));
    }

    private static (string Drill, GrowingShots Shots) Prepared(TemporaryFolder folder)
    {
        var drill = folder.File("drill.json");
        Assert.Equal(ShotsInDrill, MixedDrill.Write(drill, ShotsInDrill));
        var shots = new GrowingShots(folder.File("shots.csv"), Seed);
        shots.GrowTo(5);
        return (drill, shots);
    }

    private static string[] RunOf(string drill, GrowingShots shots, string data) =>
        ["run", "--json", "--drill", drill, "--bowler", "Fault Tester", "--seed", "7", "--follow", shots.File, "--data", data];

    /// <summary>Reads on until the program says that the disk is full.</summary>
    /// <param name="program">The program.</param>
    /// <param name="last">The last step that it had acknowledged before.</param>
    /// <param name="stop">Ends the wait.</param>
    /// <returns>The last step that it acknowledged.</returns>
    private static async Task<long> UntilFullAsync(RunningProgram program, long last, CancellationToken stop)
    {
        await program.LineAsync(
            line =>
            {
                last = AcknowledgedStep.TryParse(line)?.Sequence ?? last;
                return line.StartsWith("""{"notice":""", StringComparison.Ordinal) && line.Contains(FullWords, StringComparison.Ordinal);
            },
            stop);
        return last;
    }

    private static async Task<(IReadOnlyList<AcknowledgedStep> Steps, Outcome Outcome)> RestAsync(RunningProgram program, CancellationToken stop)
    {
        var lines = new List<string>();
        while (await program.NextLineAsync(stop) is { } line)
        {
            lines.Add(line);
        }

        return ([.. lines.Select(AcknowledgedStep.TryParse).OfType<AcknowledgedStep>()], await program.EndAsync(lines));
    }

    private static async Task<string> ShownAsync(SmallDisk disk, CancellationToken stop) => RecordText.Comparable(
        (await TheProgram.RunAsync(disk.Inside, stop, "sessions", "show", "last", "--json", "--data", disk.Data)).Good().Text);

    private static async Task<string> UninterruptedAsync(TemporaryFolder folder, string drill, GrowingShots shots, CancellationToken stop)
    {
        (await TheProgram.RunAsync(stop, RunOf(drill, shots, folder.File("whole")))).Good();
        return RecordText.Comparable(
            (await TheProgram.RunAsync(stop, "sessions", "show", "last", "--json", "--data", folder.File("whole"))).Good().Text);
    }
}
