namespace AimTrainer.Domain.Tests;

public class LadderSizingTests
{
    private static readonly LadderSizing Rule = new(Widths(5, 3, 2, 1), HitsToNarrow: 4, MissesToWiden: 3, OfLast: 5);

    [Fact]
    public void Start_NoWidth_IsTheWidest() => Assert.Equal(5, Rule.Start(null).Width.Boards);

    [Fact]
    public void Start_WidthNotInTheList_SaysWhichAre()
    {
        var error = Assert.Throws<ArgumentException>(() => Rule.Start(Sequence.Boards(4)));
        Assert.Contains("[5, 3, 2, 1]", error.Message, StringComparison.Ordinal);
    }

    // By hand.
    [Theory]
    [InlineData(5, "HHHH", "5 5 5 5 3")]
    [InlineData(5, "HHMHH", "5 5 5 5 5 3")]
    [InlineData(5, "HMHMHHH", "5 5 5 5 5 5 5 3")]
    [InlineData(5, "MHHMHMHMHH", "5 5 5 5 5 5 5 5 5 5 5")]
    [InlineData(3, "HMMM", "3 3 3 3 5")]
    [InlineData(3, "MHMHM", "3 3 3 3 3 5")]
    [InlineData(3, "MHHMHM", "3 3 3 3 3 3 3")]
    [InlineData(5, "MMMM", "5 5 5 5 5")]
    [InlineData(1, "HHHHHHMMHM", "1 1 1 1 1 1 1 1 1 1 2")]
    public void After_HitsAndMisses_StepAlongTheList(double start, string outcomes, string widths) =>
        Assert.Equal(widths, string.Join(' ', Rule.Widths(start, outcomes)));

    // Three hits before the change do not count at the new width.
    [Fact]
    public void After_AChange_LooksBackAnew() =>
        Assert.Equal([5, 5, 5, 5, 3, 3, 3, 3, 2], Rule.Widths(5, "HHHHHHHH"));

    [Fact]
    public void After_WidthsBeyondTheLimits_AreOneStepWithTheLimit()
    {
        var rule = new LadderSizing(Widths(8, 5, 3, 2, 1), 1, 1, 1) { Widest = Sequence.Boards(4), Narrowest = Sequence.Boards(2.5) };
        Assert.Equal([4, 3, 2.5, 2.5, 3, 4, 4, 3], rule.Widths(8, "HHHMMMH"));
    }

    [Theory]
    [InlineData(2.6, "HHHH", 2)]
    [InlineData(2.6, "MMM", 5)]
    [InlineData(2.5, "MMM", 5)]
    [InlineData(4.2, "MMM", 5)]
    [InlineData(4.2, "HHHH", 3)]
    [InlineData(7, "MMM", 7)]
    [InlineData(7, "HHHH", 3)]
    [InlineData(1.2, "HHHH", 1)]
    public void SetByHand_BetweenTheWidths_GoesOnFromTheNearest(double width, string outcomes, double expected)
    {
        var set = Rule.SetByHand(Rule.Start(null), Sequence.Boards(width));
        Assert.Equal(width, set.Width.Boards);
        Assert.Equal(expected, Rule.States(set, outcomes).Last().Width.Boards);
    }

    [Theory]
    [InlineData(3, 2, 5)]
    [InlineData(0, 3, 2)]
    [InlineData(3, 0, 3)]
    [InlineData(6, 3, 5)]
    [InlineData(3, 6, 5)]
    [InlineData(40, 40, 65)]
    public void Constructor_CountsThatDoNotFit_Throw(int hits, int misses, int ofLast) =>
        Assert.ThrowsAny<ArgumentException>(() => new LadderSizing(Widths(5, 3), hits, misses, ofLast));

    [Fact]
    public void Constructor_WidthsThatAreNoLadder_Throw()
    {
        Assert.ThrowsAny<ArgumentException>(() => new LadderSizing(Widths(), 4, 3, 5));
        Assert.ThrowsAny<ArgumentException>(() => new LadderSizing(Widths(3, 5), 4, 3, 5));
        Assert.ThrowsAny<ArgumentException>(() => new LadderSizing(Widths(3, 3), 4, 3, 5));
        Assert.ThrowsAny<ArgumentException>(() => new LadderSizing(Widths(3, 0.1), 4, 3, 5));
    }

    [Fact]
    public void After_TheLongestLook_CountsAllOfIt()
    {
        var rule = new LadderSizing(Widths(5, 3), HitsToNarrow: 64, MissesToWiden: 1, OfLast: 64);
        Assert.Equal(5, rule.States(rule.Start(null), new string('H', 63)).Last().Width.Boards);
        Assert.Equal(3, rule.States(rule.Start(null), new string('H', 64)).Last().Width.Boards);
    }

    private static ValueList<BoardOffset> Widths(params double[] boards) => boards.Select(Sequence.Boards).ToValueList();
}
