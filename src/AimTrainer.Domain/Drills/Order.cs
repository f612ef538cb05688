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
}
