using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display.Tests;

/// <summary>Whose name and whose turn the overhead screen shows.</summary>
public sealed class OverheadNameTests
{
    private static readonly SceneState Target = SceneStates.All().Single(state => state.Name == "target");

    [Fact]
    public void Build_NothingAgreed_WritesInitialsAndNoName()
    {
        var words = Words(Target.Overhead.Snapshot with { NameOnScreen = null });

        Assert.Contains("\"B. A.\"", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Bowler A", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_SharedLane_WritesWhoThrowsAndWhoIsNext()
    {
        var turns = new LaneTurns(3, 1, 0,
            [
                new LaneTurn("a", "Ann Lee", "A. L.", TurnStatus.Here, SessionPhase.Throwing, 2, IsNow: false, IsNext: true),
                new LaneTurn("b", "Ben Oak", "Ben", TurnStatus.Here, SessionPhase.Throwing, 1, IsNow: true, IsNext: false),
            ], null);

        var words = Words(Target.Overhead.Snapshot with { Turns = turns });

        Assert.Contains("\"Ben throws, then A. L.\"", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Ann", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Ann Aspen", "Ben", "Ann Aspen, then Ben")]
    [InlineData("Wilhelmina", "Maximilian", "Wilhelmina throws")]
    public void Build_SharedLaneWithLongNames_WritesTheOneWhoThrowsWhole(string now, string next, string written)
    {
        var turns = new LaneTurns(3, 1, 0,
            [
                new LaneTurn("a", null, now, TurnStatus.Here, SessionPhase.Throwing, 2, IsNow: true, IsNext: false),
                new LaneTurn("b", null, next, TurnStatus.Here, SessionPhase.Throwing, 1, IsNow: false, IsNext: true),
            ], null);

        Assert.Contains($"\"{written}\"", Words(Target.Overhead.Snapshot with { Turns = turns }), StringComparison.Ordinal);
    }

    private static string Words(SessionSnapshot snapshot) => SceneText.Write(OverheadScene.Build(Target.Overhead with { Snapshot = snapshot }));
}
