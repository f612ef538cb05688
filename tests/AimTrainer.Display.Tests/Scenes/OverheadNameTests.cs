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

    private static string Words(SessionSnapshot snapshot) => SceneText.Write(OverheadScene.Build(Target.Overhead with { Snapshot = snapshot }));
}
