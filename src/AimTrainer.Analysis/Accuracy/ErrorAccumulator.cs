using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out <see cref="ErrorMeasures"/> while misses arrive, one at a time, keeping none of them. Adding allocates nothing.</summary>
/// <remarks>
/// A miss is a whole number of ten-thousandths of a board, so the sums, kept as decimals, are exact: neither the order of the
/// shots nor a large bias changes the result. Only the last division and root are floating point. Exact up to a million shots;
/// beyond that the sums round in their 28th digit. Not for use from several threads at once.
/// </remarks>
public sealed class ErrorAccumulator
{
    private decimal _sum;
    private decimal _sumOfSizes;
    private decimal _sumOfSquares;

    /// <summary>How many misses were added.</summary>
    public int Count { get; private set; }

    /// <summary>The measures of all misses added so far.</summary>
    public ErrorMeasures Result
    {
        get
        {
            if (Count == 0)
            {
                return new ErrorMeasures(0, null, null, null, null);
            }

            // n Σe² - (Σe)² is n² times the squared variable error, without the loss of a difference of rounded numbers.
            var scatter = Math.Sqrt((double)((Count * _sumOfSquares) - (_sum * _sum))) / Count;
            return new ErrorMeasures(
                Count,
                (double)(_sum / Count),
                Count < 2 ? null : scatter,
                (double)(_sumOfSizes / Count),
                Math.Sqrt((double)(_sumOfSquares / Count)));
        }
    }

    /// <summary>Standard deviation of the sizes of the misses, with n - 1: for limits of the absolute error. Null below two.</summary>
    internal double? DeviationOfSizes => Count < 2
        ? null
        : Math.Sqrt((double)((Count * _sumOfSquares) - (_sumOfSizes * _sumOfSizes)) / ((double)Count * (Count - 1)));

    /// <summary>Adds a miss.</summary>
    /// <param name="miss">Crossing less target centre.</param>
    public void Add(BoardOffset miss) => Add(miss, 1);

    /// <summary>Adds a miss that came several times.</summary>
    internal void Add(BoardOffset miss, int times)
    {
        var boards = miss.ExactBoards;
        Count += times;
        _sum += times * boards;
        _sumOfSizes += times * Math.Abs(boards);
        _sumOfSquares += times * boards * boards;
    }
}
