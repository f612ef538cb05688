using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out <see cref="ErrorMeasures"/> while misses arrive, one at a time, keeping none of them. Adding allocates nothing.</summary>
/// <remarks>
/// Running means, and the sum of squares about the running mean, updated with each miss; sums of raw squares would lose the
/// scatter of a large bias. Not for use from several threads at once.
/// Source: Welford 1962, "Note on a method for calculating corrected sums of squares and products", Technometrics 4:419-420
/// (from memory).
/// </remarks>
public sealed class ErrorAccumulator
{
    private double _mean;
    private double _squaresAboutMean;
    private double _meanSize;
    private double _meanSquare;

    /// <summary>How many misses were added.</summary>
    public int Count { get; private set; }

    /// <summary>The measures of all misses added so far.</summary>
    public ErrorMeasures Result => Count == 0
        ? new ErrorMeasures(0, null, null, null, null)
        : new ErrorMeasures(
            Count,
            _mean,
            Count < 2 ? null : Math.Sqrt(_squaresAboutMean / Count),
            _meanSize,
            Math.Sqrt(_meanSquare));

    /// <summary>Adds a miss.</summary>
    /// <param name="miss">Crossing less target centre.</param>
    public void Add(BoardOffset miss)
    {
        var boards = miss.Boards;
        Count++;
        var fromOldMean = boards - _mean;
        _mean += fromOldMean / Count;
        _squaresAboutMean += fromOldMean * (boards - _mean);
        _meanSize += (Math.Abs(boards) - _meanSize) / Count;
        _meanSquare += ((boards * boards) - _meanSquare) / Count;
    }
}
