using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class AimProgressTests
{
    private static readonly AimBowler _bowler = new(Hand.Right, 17.9, 350, 45, Scatter.Of([0.5, 0.2, 0.3, 12]));
    private static readonly AimSettings _settings = new() { Grid = new AimGrid(18, 26, 1, 1, 4, 0.5), MapThrows = 200, Throws = 300 };

    [Fact]
    public void Advise_Progress_RisesToTheWhole()
    {
        var shares = new List<double>();
        AimAdvisor.Advise(LaneBelief.Exactly(InventedLane.House()), Ball.Usual, _bowler, _settings, shares.Add, TestContext.Current.CancellationToken);

        Assert.Equal(shares.Order(), shares);
        Assert.True(shares.Count > 5, $"{shares.Count} steps");
        Assert.InRange(shares[^1], 0.9, 1);
    }

    [Fact]
    public void Advise_Stopped_StopsAtOnce()
    {
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => AimAdvisor.Advise(
            LaneBelief.Exactly(InventedLane.House()), Ball.Usual, _bowler, _settings, share => { Assert.True(share < 0.5); stop.Cancel(); }, stop.Token));
    }

    [Fact]
    public void Advise_OnOneCore_SaysTheSame()
    {
        var lane = LaneBelief.Exactly(InventedLane.House());
        var (one, all) = (Advise(1), Advise(null));
        Assert.Equal(all.Map, one.Map);
        Assert.Equal((all.Best, all.ChanceError), (one.Best, one.ChanceError));

        AimAdvice Advise(int? cores) => AimAdvisor.Advise(lane, Ball.Usual, _bowler, _settings with { Cores = cores }, null, TestContext.Current.CancellationToken);
    }
}
