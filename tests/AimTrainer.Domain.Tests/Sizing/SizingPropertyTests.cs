using CsCheck;

namespace AimTrainer.Domain.Tests;

public class SizingPropertyTests
{
    private static readonly Gen<BoardOffset> Width = Gen.Int[5_000, 200_000].Select(tenThousandths => Sequence.Boards(tenThousandths / 10_000.0));

    private static readonly Gen<(BoardOffset Narrowest, BoardOffset Widest)> Limits =
        Gen.Select(Width, Width, (one, other) => one < other ? (one, other) : (other, one));

    private static readonly Gen<Sizing> Ladders = Gen.Select(
        Gen.Int[50, 2000].HashSet[1, 6],
        Gen.Int[1, 64].SelectMany(ofLast => Gen.Int[1, ofLast].SelectMany(hits => Gen.Int[ofLast + 1 - hits, ofLast].Select(misses => (hits, misses, ofLast)))),
        (widths, counts) => (Sizing)new LadderSizing(
            widths.OrderDescending().Select(hundredths => Sequence.Boards(hundredths / 100.0)).ToValueList(),
            counts.hits,
            counts.misses,
            counts.ofLast));

    private static readonly Gen<Sizing> Staircases = Gen.Select(
        Gen.Int[1, 4],
        Gen.Int[1, 4],
        Gen.OneOf(
            Gen.Int[1, 300].Select(hundredths => (StaircaseStep)new StaircaseStep.ByBoards(Sequence.Boards(hundredths / 100.0))),
            Gen.Double[1.001, 3].Select(factor => (StaircaseStep)new StaircaseStep.ByFactor(factor))),
        Gen.Int[2, 12],
        (hits, misses, step, reversals) => (Sizing)new StaircaseSizing(hits, misses, step, reversals));

    private static readonly Gen<Sizing> Weighted =
        Gen.Select(Gen.Double[0.05, 0.95], Gen.Double[0.001, 3], (goal, octaves) => (Sizing)new WeightedSizing(goal, octaves));

    private static readonly Gen<Sizing> Scatters = Gen.Select(
        Gen.Double[0.05, 0.95],
        Gen.Double[0.05, 1],
        Gen.Int[10, 800],
        (goal, keep, hundredths) => (Sizing)new ScatterSizing(goal, keep, Sequence.Boards(hundredths / 100.0)));

    private static readonly Gen<SizedShot> Shot =
        Gen.Select(Gen.Bool, Gen.OneOf(Gen.Int[-300, 300], Gen.Int[-4000, 4000]), (held, hundredths) => new SizedShot(held, Sequence.Boards(hundredths / 100.0)));

    private static readonly Gen<Sizing> HitOrMissRules = WithLimits(Gen.OneOf(Ladders, Staircases, Weighted));

    private static readonly Gen<Sizing> AllRules = WithLimits(Gen.OneOf(Ladders, Staircases, Weighted, Scatters));

    // Every so often somebody sets the width by hand, to anything that a target may be.
    private static readonly Gen<List<(SizedShot Shot, BoardOffset? ByHand)>> Happenings =
        Gen.Select(Shot, Gen.Int[0, 9], Width, (shot, die, width) => (shot, die == 0 ? width : (BoardOffset?)null)).List[0, 120];

    [Fact]
    public void After_AnySequence_StaysWithinTheLimits() =>
        Gen.Select(AllRules, Happenings).Sample((rule, happenings) =>
            Assert.All(Run(rule, happenings), state => Assert.True(state.Width >= rule.Narrowest && state.Width <= rule.Widest)));

    [Fact]
    public void After_SameInputs_GivesEqualStates() =>
        Gen.Select(AllRules, Happenings).Sample((rule, happenings) => Assert.Equal(Run(rule, happenings), Run(rule, happenings)));

    [Fact]
    public void After_HitOrMiss_NeverGoesTheOtherWay() =>
        Gen.Select(HitOrMissRules, Happenings).Sample((rule, happenings) =>
        {
            var states = Run(rule, happenings);
            for (var i = 0; i < happenings.Count; i++)
            {
                if (happenings[i].ByHand is null)
                {
                    Assert.True(happenings[i].Shot.Held ? states[i + 1].Width <= states[i].Width : states[i + 1].Width >= states[i].Width);
                }
            }
        });

    [Fact]
    public void Scatter_AnyShot_ChangesByAFifthOrHalfABoardAtMost() =>
        Gen.Select(WithLimits(Scatters), Happenings).Sample((rule, happenings) =>
        {
            var states = Run(rule, happenings);
            for (var i = 0; i < happenings.Count; i++)
            {
                if (happenings[i].ByHand is null)
                {
                    var most = Math.Max(0.5m, states[i].Width.ExactBoards / 5);
                    Assert.InRange(states[i + 1].Width.ExactBoards, states[i].Width.ExactBoards - most, states[i].Width.ExactBoards + most);
                }
            }
        });

    // The exact width must not run ahead of a shown one that may not follow as fast, or the shown one would overshoot when things turn.
    [Fact]
    public void Scatter_AnyShot_ShowsTheExactWidthToTheNearestHalfBoard() =>
        Gen.Select(Scatters, Happenings).Sample((rule, happenings) => Assert.All(
            Run(rule, happenings).Cast<ScatterState>(),
            state => Assert.InRange(state.ExactBoards - state.Width.Boards, -0.25, 0.25)));

    [Fact]
    public void Scatter_MirroredMisses_GivesTheSameWidths() =>
        Gen.Select(WithLimits(Scatters), Happenings).Sample((rule, happenings) =>
        {
            var mirrored = happenings.Select(happening => (happening.Shot with { Miss = -happening.Shot.Miss }, happening.ByHand)).ToList();
            Assert.Equal(Shown(Run(rule, happenings)), Shown(Run(rule, mirrored)));
        });

    private static IEnumerable<(BoardOffset Width, bool Gross, bool Uncertain)> Shown(List<SizingState> states) =>
        states.Select(state => (state.Width, state.LastWasGross, state.Uncertain));

    private static Gen<Sizing> WithLimits(Gen<Sizing> rules) =>
        Gen.Select(rules, Limits, (rule, limits) => rule with { Narrowest = limits.Narrowest, Widest = limits.Widest });

    private static List<SizingState> Run(Sizing rule, List<(SizedShot Shot, BoardOffset? ByHand)> happenings)
    {
        var states = new List<SizingState> { rule.Start(null) };
        foreach (var (shot, byHand) in happenings)
        {
            states.Add(byHand is { } width ? rule.SetByHand(states[^1], width) : rule.After(states[^1], shot));
        }

        return states;
    }
}
