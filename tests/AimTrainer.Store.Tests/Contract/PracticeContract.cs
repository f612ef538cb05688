using AimTrainer.Domain;
using AimTrainer.Sessions;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Store.Tests;

public abstract class PracticeContract(TestRecord record) : IDisposable
{
    private readonly TestRecord _record = record;

    [Fact]
    public async Task FindPracticeAsync_NobodyOfThatName_IsNull()
    {
        Assert.Null(await _record.Store.FindPracticeAsync(new PracticeFilter("nobody"), Cancel));
        Assert.Empty(await _record.Store.LastCrossingsAsync(new PracticeFilter("nobody"), 10, Cancel));
    }

    [Fact]
    public async Task FindPracticeAsync_SessionWithoutShots_HasNoSums()
    {
        await KeepAsync(_record.Store, Setup());
        var practice = (await _record.Store.FindPracticeAsync(new PracticeFilter("ANN  lee"), Cancel))!;
        Assert.Equal(("Ann Lee", Hand.Right, false, 1, 0, 0, false), (
            practice.Bowler, practice.Hand, practice.Simulated, practice.Sessions.Count, practice.Blocks.Count, practice.OtherHandSessions, practice.CutOff));
        Assert.Empty(await _record.Store.LastCrossingsAsync(new PracticeFilter("Ann Lee"), 10, Cancel));
    }

    [Fact]
    public async Task FindPracticeAsync_Shots_AddUpAsAHandFinds()
    {
        // At the arrows (board 10): misses 0.25, -1, 2; at 42 ft (board 7) one crossing known, a miss of 3.
        await KeepAsync(_record.Store, Setup(), Shot(10.25), Shot(9), Shot(reading =>
        {
            reading.AddCrossing(15, 12);
            reading.AddCrossing(42, 10);
        }));
        var practice = (await _record.Store.FindPracticeAsync(new PracticeFilter("Ann Lee"), Cancel))!;
        Assert.Equal(2, practice.Blocks.Count);
        var near = practice.Blocks.Single(block => block.Target == "arrows");
        Assert.Equal(("s1", Start.ToUniversalTime(), 0, "second arrow", BlockKind.Training, "blue one", 15.0), (
            near.SessionId, near.StartedAt, near.Run, near.BlockName, near.Kind!.Value, near.Ball, near.DistanceFeet));
        Assert.Equal((3, 3, 2), (near.Shots, near.Graded, near.Held));
        Assert.Equal((1.25, 3.25, 5.0625), (near.SumOfMisses, near.SumOfSizes, near.SumOfSquares));
        Assert.Equal((9.0, 12.0, 2), (near.LowestBoard, near.HighestBoard, near.WholeBoards));
        var far = practice.Blocks.Single(block => block.Target == "downlane");
        Assert.Equal((3, 1, 3.0, 9.0, 1), (far.Shots, far.Graded, far.SumOfMisses, far.SumOfSquares, far.WholeBoards));
    }

    [Fact]
    public async Task FindPracticeAsync_VoidedOtherHandOtherBowlerSimulated_AreNotIn()
    {
        await KeepAsync(_record.Store, Setup("old") with { At = Start.AddDays(-1), Hand = Hand.Left }, Shot(10));
        await KeepAsync(_record.Store, Setup("other", "Bo"), Shot(10));
        await KeepAsync(_record.Store, Setup("invented") with { At = Start.AddDays(2), Simulated = true }, Shot(10));
        await KeepAsync(_record.Store, Setup(), Shot(10), Shot(11), Shot(12));
        await _record.Store.AppendAsync("s1", new LogEntry(5, new SessionInput.VoidShot(Start, 2, "slipped"), [new SessionEvent.ShotVoided(2, "slipped")]), Cancel);

        var practice = (await _record.Store.FindPracticeAsync(new PracticeFilter("Ann Lee"), Cancel))!;
        Assert.Equal((1, 1, false), (practice.Sessions.Count, practice.OtherHandSessions, practice.Simulated));
        Assert.Equal((2, 2.0), (practice.Blocks[0].Shots, practice.Blocks.Single(block => block.Target == "arrows").SumOfMisses));
        Assert.Equal([3, 1], (await CrossingsAsync(10)).Select(crossing => crossing.Number).Distinct());
    }

    [Fact]
    public async Task FindPracticeAsync_OnlySimulatedSessions_AreGivenAndSaySo()
    {
        await KeepAsync(_record.Store, Setup() with { Simulated = true }, Shot(10));
        var practice = (await _record.Store.FindPracticeAsync(new PracticeFilter("Ann Lee"), Cancel))!;
        Assert.Equal((true, 2), (practice.Simulated, practice.Blocks.Count));
    }

    [Fact]
    public async Task FindPracticeAsync_Period_TakesItsStartAndLeavesItsEnd()
    {
        for (var day = 0; day < 5; day++)
        {
            await KeepAsync(_record.Store, Setup($"s{day}") with { At = Start.AddDays(day) }, Shot(10));
        }

        var filter = new PracticeFilter("Ann Lee", Start.AddDays(1), Start.AddDays(3));
        var practice = (await _record.Store.FindPracticeAsync(filter, Cancel))!;
        Assert.Equal(["s1", "s2"], practice.Sessions.Select(session => session.SessionId));
        Assert.Equal(["s1", "s2"], practice.Blocks.Select(block => block.SessionId).Distinct());
        Assert.Equal(["s2", "s1"], (await _record.Store.LastCrossingsAsync(filter, 10, Cancel)).Select(crossing => crossing.SessionId).Distinct());
    }

    [Fact]
    public async Task LastCrossingsAsync_Limit_CountsShotsAndKeepsAllTheirTargets()
    {
        await KeepAsync(_record.Store, Setup(), Shot(10), Shot(11), Shot(12));
        var crossings = await CrossingsAsync(2);
        Assert.Equal([3, 3, 2, 2], crossings.Select(crossing => crossing.Number));
        Assert.Equal(["arrows", "downlane", "arrows", "downlane"], crossings.Select(crossing => crossing.Target));
        Assert.Equal((12.0, 2.0, CrossingKind.Measured, "blue one", 14.0, 17.2), (
            crossings[0].CrossingBoard, crossings[0].MissBoards, crossings[0].Crossing, crossings[0].Ball, crossings[0].LaydownBoard, crossings[0].SpeedMph));
        Assert.Equal((CrossingKind.Unknown, (double?)null, (bool?)null), (crossings[1].Crossing, crossings[1].MissBoards, crossings[1].Held));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(PracticeLimits.MostShots + 1)]
    public async Task LastCrossingsAsync_ImpossibleLimit_Throws(int shots) =>
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => CrossingsAsync(shots));

    public void Dispose()
    {
        _record.Dispose();
        GC.SuppressFinalize(this);
    }

    private Task<ValueList<PracticeCrossing>> CrossingsAsync(int shots) => _record.Store.LastCrossingsAsync(new PracticeFilter("Ann Lee"), shots, Cancel);
}
