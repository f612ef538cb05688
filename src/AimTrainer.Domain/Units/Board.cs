namespace AimTrainer.Domain;

/// <summary>
/// A place across the lane, in boards, counted from the bowler's ball-hand edge; an integer is the middle of that board,
/// so the lane runs from 0.5 to 39.5 and 20 is its centre.
/// </summary>
/// <remarks>
/// Kept as a whole number of ten-thousandths of a board, so that a grade never hangs on a rounding error.
/// Range <see cref="Minimum"/> to <see cref="Maximum"/> inclusive: wide enough for a line that is drawn on past the lane.
/// The default value is board 0, in the bowler's own gutter.
/// </remarks>
public readonly record struct Board : IComparable<Board>
{
    /// <summary>Lowest value, in boards.</summary>
    public const double Minimum = -200;

    /// <summary>Highest value, in boards.</summary>
    public const double Maximum = 240;

    private readonly int _tenThousandths;

    private Board(int tenThousandths) => _tenThousandths = tenThousandths;

    /// <summary>The middle of the lane, board 20.</summary>
    public static Board LaneCentre { get; } = FromBoards(20);

    /// <summary>The edge of the lane on the ball-hand side, 0.5.</summary>
    public static Board NearEdge { get; } = FromBoards(0.5);

    /// <summary>The edge of the lane on the far side, 39.5.</summary>
    public static Board FarEdge { get; } = FromBoards(39.5);

    /// <summary>This place in boards.</summary>
    public double Boards => _tenThousandths / 10_000.0;

    /// <summary>This place in boards, exact.</summary>
    public decimal ExactBoards => _tenThousandths / 10_000m;

    internal int TenThousandths => _tenThousandths;

    /// <summary>A place worked out or given, rounded to 0.0001 board (ties to even).</summary>
    /// <param name="boards">Boards from the ball-hand edge, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Board FromBoards(double boards) =>
        new(FixedPoint.TenThousandths(boards, Minimum, Maximum, nameof(boards)));

    /// <summary>A place that was measured: rounded once, on arrival, to 0.01 board (ties to even).</summary>
    /// <param name="boards">Boards from the ball-hand edge, <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static Board FromMeasurement(double boards) =>
        new(FixedPoint.Hundredths(boards, Minimum, Maximum, nameof(boards)) * 100);

    internal static Board FromTenThousandths(int tenThousandths) =>
        new(FixedPoint.InRange(tenThousandths, Minimum, Maximum, 10_000, nameof(tenThousandths)));

    /// <summary>The same place for a bowler of the other hand: 40 minus this.</summary>
    public Board Mirrored() => new(400_000 - _tenThousandths);

    /// <inheritdoc/>
    public int CompareTo(Board other) => _tenThousandths.CompareTo(other._tenThousandths);

    /// <summary>How far <paramref name="left"/> lies inside of <paramref name="right"/>.</summary>
    public static BoardOffset operator -(Board left, Board right) =>
        BoardOffset.FromTenThousandths(left._tenThousandths - right._tenThousandths);

    /// <summary>The place <paramref name="offset"/> further inside.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It lies outside the range.</exception>
    public static Board operator +(Board board, BoardOffset offset) => FromTenThousandths(board._tenThousandths + offset.TenThousandths);

    /// <summary>The place <paramref name="offset"/> further outside.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It lies outside the range.</exception>
    public static Board operator -(Board board, BoardOffset offset) => FromTenThousandths(board._tenThousandths - offset.TenThousandths);

    /// <summary>Whether the left place is nearer to the ball-hand edge.</summary>
    public static bool operator <(Board left, Board right) => left._tenThousandths < right._tenThousandths;

    /// <summary>Whether the left place is farther from the ball-hand edge.</summary>
    public static bool operator >(Board left, Board right) => left._tenThousandths > right._tenThousandths;

    /// <summary>Whether the left place is nearer to the ball-hand edge, or the same.</summary>
    public static bool operator <=(Board left, Board right) => left._tenThousandths <= right._tenThousandths;

    /// <summary>Whether the left place is farther from the ball-hand edge, or the same.</summary>
    public static bool operator >=(Board left, Board right) => left._tenThousandths >= right._tenThousandths;

    /// <inheritdoc/>
    public override string ToString() => FixedPoint.Text(Boards);
}
