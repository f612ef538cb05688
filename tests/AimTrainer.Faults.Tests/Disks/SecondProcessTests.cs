namespace AimTrainer.Faults.Tests;

/// <summary>One process at a time holds the data; reading beside it is free.</summary>
public sealed class SecondProcessTests
{
    [Fact]
    public async Task SecondProcess_OnTheSameData_IsToldSoAndTheFirstGoesOn()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        var (data, drill, shots) = (folder.File("data"), folder.File("drill.json"), new GrowingShots(folder.File("shots.csv"), 3));
        var shotsInDrill = MixedDrill.Write(drill, 8);
        shots.GrowTo(3);
        using var first = TheProgram.Start(
            [], "run", "--json", "--drill", drill, "--bowler", "Fault Tester", "--follow", shots.File, "--data", data);
        await first.ShotAsync(stop);

        var second = await TheProgram.RunAsync(stop, "run", "--json", "--drill", drill, "--simulate", "--station", "2", "--data", data);
        second.FailedSaying("is in use by another aimtrainer (process ");
        Assert.Contains($"(process {first.Id})", second.Error, StringComparison.Ordinal);
        (await TheProgram.RunAsync(stop, "sessions", "show", "last", "--json", "--data", data)).Good();
        (await TheProgram.RunAsync(stop, "backup", folder.File("backup.db"), "--data", data)).Good();
        (await TheProgram.RunAsync(stop, "restore", folder.File("backup.db"), "--data", data)).FailedSaying("is in use by another aimtrainer");

        shots.GrowTo(shotsInDrill);
        shots.Finish();
        while (await first.NextLineAsync(stop) is not null)
        {
        }

        Assert.Equal(0, (await first.EndAsync([])).ExitCode);
        var stored = (await TheProgram.RunAsync(stop, "sessions", "export", "last", "--data", data)).Good().Lines;
        Assert.Equal(1 + shotsInDrill, stored.Count);
    }
}
