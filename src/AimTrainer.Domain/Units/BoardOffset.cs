namespace AimTrainer.Domain;

/// <summary>
/// A distance across the lane, in boards: a miss, a move or a width. Positive is inside (toward higher boards), negative is
/// outside (toward the bowler's own gutter).
/// </summary>
/// <remarks>
/// Kept as a whole number of ten-thousandths of a board. Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive.
/// The default value is no distance.
/// </remarks>
public readonly record struct BoardOffset : IComparable<BoardOffset>
{
    /// <summary>Lowest value, in boards.</summary>
    public const double Minimum = -500;

    /// <summary>Highest value, in boards.</summary>
    public const double Maximum = 500;

    private readonly int _tenThousandths;

    private BoardOffset(int tenThousandths) => _tenThousandths = tenThousandths;

    /// <summary>No distance.</summary>
    public static BoardOffset Zero => default;

    /// <summary>This distance in boards.</summary>
    public double Boards => _tenThousandths / 10_000.0;

    /// <summary>This distance in boards, exact.</summary>
    public decimal ExactBoards => _tenThousandths / 10_000m;

    internal int TenThousandths => _tenThousandths;

    /// <summary>A distance, rounded to 0.0001 board (ties to even).</summary>
    /// <param name="boards">Boards, positive inside, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static BoardOffset FromBoards(double boards) =>
        new(FixedPoint.TenThousandths(boards, Minimum, Maximum, nameof(boards)));

    internal static BoardOffset FromTenThousandths(int tenThousandths) =>
        new(FixedPoint.InRange(tenThousandths, Minimum, Maximum, 10_000, nameof(tenThousandths)));

    /// <summary>The size of this distance, without its side.</summary>
    public BoardOffset Abs() => new(Math.Abs(_tenThousandths));

    /// <summary>This distance times a number, rounded to 0.0001 board (ties to even).</summary>
    /// <param name="factor">Any finite number that keeps the result in range.</param>
    /// <exception cref="ArgumentOutOfRangeException">The result is outside the range.</exception>
    public BoardOffset Times(decimal factor)
    {
        // No distance but 0 stays in range beyond this factor, and the product could leave what a decimal holds.
        const decimal LargestFactor = (decimal)Maximum * 10_000;
        if (_tenThousandths != 0 && Math.Abs(factor) > LargestFactor)
        {
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "the result is outside the range");
        }

        return FromBoards((double)(ExactBoards * factor));
    }

    /// <summary>This distance, or the nearer of the two limits when it lies outside them.</summary>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit, not below <paramref name="low"/>.</param>
    /// <exception cref="ArgumentException">The limits are the wrong way round.</exception>
    public BoardOffset Clamp(BoardOffset low, BoardOffset high) => new(Math.Clamp(_tenThousandths, low._tenThousandths, high._tenThousandths));

    /// <inheritdoc/>
    public int CompareTo(BoardOffset other) => _tenThousandths.CompareTo(other._tenThousandths);

    /// <summary>The two distances together.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The result is outside the range.</exception>
    public static BoardOffset operator +(BoardOffset left, BoardOffset right) =>
        FromTenThousandths(left._tenThousandths + right._tenThousandths);

    /// <summary>The first distance less the second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The result is outside the range.</exception>
    public static BoardOffset operator -(BoardOffset left, BoardOffset right) =>
        FromTenThousandths(left._tenThousandths - right._tenThousandths);

    /// <summary>The same distance to the other side.</summary>
    public static BoardOffset operator -(BoardOffset offset) => new(-offset._tenThousandths);

    /// <summary>Whether the left distance is the lower (further outside).</summary>
    public static bool operator <(BoardOffset left, BoardOffset right) => left._tenThousandths < right._tenThousandths;

    /// <summary>Whether the left distance is the higher (further inside).</summary>
    public static bool operator >(BoardOffset left, BoardOffset right) => left._tenThousandths > right._tenThousandths;

    /// <summary>Whether the left distance is the lower, or the same.</summary>
    public static bool operator <=(BoardOffset left, BoardOffset right) => left._tenThousandths <= right._tenThousandths;

    /// <summary>Whether the left distance is the higher, or the same.</summary>
    public static bool operator >=(BoardOffset left, BoardOffset right) => left._tenThousandths >= right._tenThousandths;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(Boards);
}
