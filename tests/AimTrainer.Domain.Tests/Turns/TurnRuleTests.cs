using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class TurnRuleTests
{
    private static readonly string[] Names = ["Ann", "Ben", "Cas", "Dee", "Eli", "Flo", "Gus"];

    [Fact]
    public void Settle_ShotsInTurn_GoRoundTheOrder()
    {
        var play = new TurnPlay(["Ann", "Ben", "Cas"]);

        Assert.Equal(["Ann", "Ben", "Cas", "Ann", "Ben"], Enumerable.Range(0, 5).Select(_ => play.Throw()));
    }

    [Fact]
    public void Settle_TwoShotsATurn_PassesOnAfterTheSecond()
    {
        var play = new TurnPlay(["Ann", "Ben"], shotsATurn: 2);

        Assert.Equal(["Ann", "Ann", "Ben", "Ben", "Ann"], Enumerable.Range(0, 5).Select(_ => play.Throw()));
    }

    [Fact]
    public void Join_Late_ThrowsAfterThoseWhoWereHere()
    {
        var play = new TurnPlay(["Ann", "Ben"]);
        play.Throw();
        play.Change(new TurnChange.Join("Cas", "Cas"));

        Assert.Equal(["Ben", "Cas", "Ann"], Enumerable.Range(0, 3).Select(_ => play.Throw()));
    }

    [Fact]
    public void Leave_WithTheTurn_GivesItToTheNext_AndReturnTakesTheOldPlace()
    {
        var play = new TurnPlay(["Ann", "Ben", "Cas"]);
        play.Throw();
        play.Change(new TurnChange.Leave("Ben"));
        Assert.Equal(["Cas", "Ann"], Enumerable.Range(0, 2).Select(_ => play.Throw()));
        play.Change(new TurnChange.Return("Ben"));

        Assert.Equal(["Cas", "Ann", "Ben"], Enumerable.Range(0, 3).Select(_ => play.Throw()));
    }

    [Fact]
    public void Swap_WithTheOneWhoThrows_TheOtherThrowsNow()
    {
        var play = new TurnPlay(["Ann", "Ben", "Cas"]);
        play.Change(new TurnChange.Swap("Ann", "Cas"));

        Assert.Equal(["Cas", "Ben", "Ann"], Enumerable.Range(0, 3).Select(_ => play.Throw()));
    }

    [Fact]
    public void Skip_AndGive_MoveTheTurnOnly()
    {
        var play = new TurnPlay(["Ann", "Ben", "Cas"]);
        play.Change(new TurnChange.Skip());
        Assert.Equal("Ben", play.Lineup.Throws!.Bowler);
        play.Change(new TurnChange.Give("Ann"));

        Assert.Equal(["Ann", "Ben", "Cas"], Enumerable.Range(0, 3).Select(_ => play.Throw()));
    }

    [Fact]
    public void Settle_SessionOver_IsDoneAndPassedOver()
    {
        var play = new TurnPlay(["Ann", "Ben"]);
        play.End("Ann");
        Assert.Equal(["Ben", "Ben"], Enumerable.Range(0, 2).Select(_ => play.Throw()));
        play.End("Ben");

        Assert.Null(play.Lineup.Throws);
        Assert.All(play.Lineup.Places, place => Assert.Equal(TurnStatus.Done, place.Status));
    }

    [Theory]
    [InlineData("Ann", "is on this lane already")]
    [InlineData(" ann ", "is on this lane already")]
    public void Join_TheSameBowler_IsRefused(string name, string said) =>
        Assert.Contains(said, TurnRule.Apply(new TurnPlay(["Ann"]).Lineup, new TurnChange.Join("other", name)).Refusal, StringComparison.Ordinal);

    [Fact]
    public void Join_ASeventh_IsRefused() =>
        Assert.Contains("take another lane", TurnRule.Apply(new TurnPlay(Names[..6]).Lineup, new TurnChange.Join("Gus", "Gus")).Refusal, StringComparison.Ordinal);

    [Fact]
    public void Apply_OfSomebodyElse_IsRefusedAndChangesNothing()
    {
        var lineup = new TurnPlay(["Ann", "Ben"]).Lineup;
        TurnChange[] changes =
        [
            new TurnChange.Leave("x"), new TurnChange.Return("Ann"), new TurnChange.Swap("Ann", "Ann"), new TurnChange.Give("x"), new TurnChange.Length(0), new TurnChange.Length(11),
        ];

        Assert.All(changes, change => Assert.Equal(lineup, Assert.IsType<TurnOutcome>(TurnRule.Apply(lineup, change) is { Refusal: not null } refused ? refused : null).Lineup));
    }

    /// <summary>Late, leaving, swapped, skipped: the turn is with somebody who is here whenever anybody is, and one settling of all shots at once is the same as one after each.</summary>
    [Fact]
    public void Settle_RandomPlay_TurnIsWithSomebodyHereAndARestartFindsTheSame() =>
        Gen.Int[0, 11].Select(Gen.Int[0, 6], Gen.Int[0, 6], (what, one, other) => (what, one, other)).List[1, 80].Sample(steps =>
        {
            var play = new TurnPlay(["Ann", "Ben"], shotsATurn: (steps.Count % 3) + 1);
            foreach (var (what, one, other) in steps)
            {
                if (what < 5)
                {
                    var before = play.Lineup.Throws;
                    Assert.Equal(before?.Bowler, play.Throw());
                }
                else if (what == 5)
                {
                    play.End(Names[one]);
                }
                else
                {
                    play.Try(what switch
                    {
                        6 => new TurnChange.Join(Names[one], Names[one]),
                        7 => new TurnChange.Leave(Names[one]),
                        8 => new TurnChange.Return(Names[one]),
                        9 => new TurnChange.Swap(Names[one], Names[other]),
                        10 => new TurnChange.Skip(),
                        _ => new TurnChange.Give(Names[one]),
                    });
                }

                var lineup = play.Lineup;
                Assert.Equal(lineup.Places.AsEnumerable().Any(place => place.Status == TurnStatus.Here), lineup.Throws is not null);
                Assert.True(lineup.Throws is null || lineup.Throws.Status == TurnStatus.Here);
                Assert.InRange(lineup.ThrownOfTurn, 0, lineup.ShotsATurn - 1);
                Assert.Equal(lineup, play.AsAfterARestart());
            }
        });

    /// <summary>Sessions as counts, and the order over them; what people changed last is what was kept.</summary>
    private sealed class TurnPlay
    {
        private readonly Dictionary<string, SessionCount> _counts = [];
        private Lineup _kept;

        public TurnPlay(string[] names, int shotsATurn = 1)
        {
            Lineup = _kept = TurnRule.Empty(1, shotsATurn);
            foreach (var name in names)
            {
                Change(new TurnChange.Join(name, name));
            }
        }

        public Lineup Lineup { get; private set; }

        public void Change(TurnChange change) => Assert.True(Try(change));

        public bool Try(TurnChange change)
        {
            var outcome = TurnRule.Apply(Lineup, change);
            Lineup = outcome.Lineup;
            if (outcome.Refusal is null)
            {
                if (change is TurnChange.Join join)
                {
                    _counts[join.SessionId] = default;
                }

                _kept = Lineup;
            }

            return outcome.Refusal is null;
        }

        public string? Throw()
        {
            var now = Lineup.Throws;
            if (now is not null)
            {
                _counts[now.SessionId] = _counts[now.SessionId] with { Shots = _counts[now.SessionId].Shots + 1 };
                Settle();
            }

            return now?.Bowler;
        }

        public void End(string session)
        {
            if (_counts.TryGetValue(session, out var count))
            {
                _counts[session] = count with { Ended = true };
                Settle();
            }
        }

        public Lineup AsAfterARestart() => TurnRule.Settle(_kept, id => _counts[id]);

        private void Settle() => Lineup = TurnRule.Settle(Lineup, id => _counts[id]);
    }
}
