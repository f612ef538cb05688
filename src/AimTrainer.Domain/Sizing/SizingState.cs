namespace AimTrainer.Domain;

/// <summary>What a sizing rule knows of one target. Each rule adds what it needs.</summary>
/// <param name="Width">The width to show next.</param>
public abstract record SizingState(BoardOffset Width)
{
    /// <summary>Whether the rule does not yet know the bowler well enough to stand by this width.</summary>
    public virtual bool Uncertain => false;

    /// <summary>The width at which the bowler's hits and misses balance, once there is one; null for rules that find none.</summary>
    public virtual Threshold? Threshold => null;

    /// <summary>Whether the last shot was left out of the width as a gross miss (it still counts everywhere else).</summary>
    public virtual bool LastWasGross => false;
}
