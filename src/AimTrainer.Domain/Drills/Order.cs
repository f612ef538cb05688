namespace AimTrainer.Domain;

/// <summary>Which aim comes next.</summary>
public abstract record Order
{
    /// <summary>All shots at the first aim, then all at the second, and so on.</summary>
    /// <param name="ShotsEach">Shots at each aim before the next, 1 or more.</param>
    public sealed record Blocked(int ShotsEach) : Order;

    /// <summary>One shot at each aim in turn.</summary>
    public sealed record Serial : Order;

    /// <summary>By chance, the same for the same seed.</summary>
    /// <param name="Seed">The drill's own seed; null takes the session's.</param>
    /// <param name="LongestRun">At most so many in a row at one aim, 1 or more.</param>
    public sealed record ByChance(ulong? Seed, int LongestRun) : Order;

    /// <summary>One aim that moves across the lane.</summary>
    /// <param name="To">Where the nearest target's centre stops: it never goes past.</param>
    /// <param name="Move">Boards at each move; its sign is worked out from where the walk starts.</param>
    /// <param name="When">What makes it move.</param>
    /// <param name="AtEnd">What happens after the last place.</param>
    public sealed record Walk(TargetPlace To, BoardOffset Move, WalkWhen When, WalkEnd AtEnd) : Order;

    /// <summary>Two or more balls at the same aims: one aim after another, each until every ball has its good throws there.</summary>
    /// <param name="Balls">The roles, 2 to 6, <see cref="ChosenBall.ReferenceRole"/> first; which ball plays which is chosen at the start of a session.</param>
    /// <param name="Throwing">Which ball is thrown after which.</param>
    /// <param name="GoodThrows">Good throws wanted of each ball at each aim, 1 or more.</param>
    /// <param name="MostThrows">With so many throws a ball is done at an aim, good or not; at least <paramref name="GoodThrows"/>.</param>
    /// <param name="CheckEvery">Every so many shots of the block the reference ball is thrown, to see whether the lane has moved; null for never.</param>
    /// <param name="FirstTargetHeld">Whether a throw is good only if it held the nearest target of its line.</param>
    public sealed record Compare(
        ValueList<string> Balls, ThrowingOrder Throwing, int GoodThrows, int MostThrows, int? CheckEvery, bool FirstTargetHeld) : Order;
}
