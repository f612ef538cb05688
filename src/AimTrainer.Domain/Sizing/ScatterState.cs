namespace AimTrainer.Domain;

/// <summary>What the scatter rule knows of one target and the bowler's misses at it.</summary>
public sealed record ScatterState : SizingState
{
    // Simulated bowlers of many kinds are at this point, about 20 shots, within 10 % of their true width half of the time, with
    // a root mean square error of 15 %: reference statistics.md section 2.6.
    private const double MostUncertainty = 0.15;

    internal ScatterState(BoardOffset width, double exactBoards, ScatterPosterior posterior, ValueList<double> kept)
        : base(width)
    {
        ExactBoards = exactBoards;
        Posterior = posterior;
        Kept = kept;
    }

    /// <summary>The width before rounding, in boards: limited to 20 % a shot and to the rule's limits.</summary>
    public double ExactBoards { get; internal init; }

    /// <summary>Bias and spread as far as they are known.</summary>
    public ScatterPosterior Posterior { get; }

    /// <inheritdoc/>
    /// <remarks>
    /// True while the spread is known to worse than 15 % (one standard deviation), which takes the weight of 20 shots: 24 thrown
    /// where each keeps 0.98. With a keep below 0.948 that weight is never reached, and this stays true.
    /// </remarks>
    public override bool Uncertain => Posterior.SpreadUncertainty > MostUncertainty;

    /// <inheritdoc/>
    public override bool LastWasGross => GrossInARow > 0;

    // The last misses that were not gross, in boards, oldest first.
    internal ValueList<double> Kept { get; }

    internal int GrossInARow { get; init; }
}
