using System.Globalization;

namespace AimTrainer.Faults.Tests;

/// <summary>Promise 1: nothing acknowledged is ever lost. tests/soak kills 200 times.</summary>
public sealed class KillTests
{
    private const int Seed = 20261125;

    [Fact]
    public async Task Run_KilledAtRandomMoments_KeepsEachAcknowledgedShotOnceAndGoesOnAsIfNothingHappened()
    {
        var stop = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        var kills = Figures.Count("KILLS", usually: 8);
        var drill = folder.File("drill.json");
        var shotsInDrill = MixedDrill.Write(drill, (kills * 12) + 60);
        var shots = new GrowingShots(folder.File("shots.csv"), Seed);
        var killed = new KilledSession(folder.File("killed"), drill, shots, shotsInDrill, Seed);

        await killed.RunAsync(kills, stop);
        var whole = await UninterruptedAsync(folder.File("whole"), drill, shots.File, stop);

        // What was acknowledged is what an uninterrupted session says of the same shots, step by step.
        Assert.All(killed.Acknowledged, step => Assert.Equal(whole[step.Key], step.Value));
        Assert.Equal(await ShownAsync(folder.File("whole"), stop), await ShownAsync(folder.File("killed"), stop));

        // The stored shots are those of the file, each once, in order: none acknowledged is lost, none is doubled.
        var expected = Enumerable.Range(1, shotsInDrill).Select(number => string.Create(CultureInfo.InvariantCulture, $"shot-{number}"));
        Assert.Equal(expected, await StoredIdsAsync(folder.File("killed"), stop));
        Assert.True(killed.KilledWhileShotsCame > 0, "no kill met a shot");
        var acknowledged = killed.Acknowledged.Values.Count(step => step.ShotId is not null);
        Figures.Say(
            $"kills: {kills} (SIGKILL; {killed.KilledWhileShotsCame} after shots of that life, {killed.KilledBeforeOpen} before it said anything), "
            + $"{acknowledged} shots acknowledged before or between, 0 lost, 0 doubled, record equal to the uninterrupted one ({shotsInDrill} shots)");
    }

    private static async Task<Dictionary<long, AcknowledgedStep>> UninterruptedAsync(string data, string drill, string shots, CancellationToken stop)
    {
        var outcome = await TheProgram.RunAsync(
            stop, "run", "--json", "--drill", drill, "--bowler", "Fault Tester", "--seed", "7", "--follow", shots, "--station", "1", "--data", data);
        return outcome.Good().Lines.Select(AcknowledgedStep.TryParse).OfType<AcknowledgedStep>().ToDictionary(step => step.Sequence);
    }

    private static async Task<string> ShownAsync(string data, CancellationToken stop) =>
        RecordText.Comparable((await TheProgram.RunAsync(stop, "sessions", "show", "last", "--json", "--data", data)).Good().Text);

    private static async Task<IEnumerable<string>> StoredIdsAsync(string data, CancellationToken stop)
    {
        var csv = (await TheProgram.RunAsync(stop, "sessions", "export", "last", "--data", data)).Good().Lines;
        Assert.StartsWith("id,", csv[0], StringComparison.Ordinal);
        return csv.Skip(1).Select(line => line.Split(',')[0]);
    }
}
