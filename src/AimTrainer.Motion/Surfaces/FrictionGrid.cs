using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// A lane surface prepared for one hand: stretches cut at the arrows and at the head pin, each with its steps, and for every board of
/// a stretch the four numbers of its bilinear oil, already divided by the scale of the friction law.
/// </summary>
/// <remarks>
/// Only additions, multiplications, divisions and square roots are used, which every machine rounds alike, and each of the four
/// lanes of a vector is worked out by itself: so a path has the same digits alone and among a million.
/// </remarks>
internal sealed class FrictionGrid
{
    public const double MetresPerFoot = 0.3048;
    public const double EndMetres = LaneSurface.EndFeet * MetresPerFoot;

    /// <summary>Cells across: between the middles of 39 boards, and an even one outside of each edge.</summary>
    private const int Across = LaneProfile.BoardCount + 1;

    /// <summary>Enough bits for the number of a cell.</summary>
    private const long LowBits = 63;

    /// <summary>Added to a number, its whole part lands in the lowest bits (round to nearest).</summary>
    private const double Magic = 4503599627370496;

    /// <summary>More oil than this makes no difference that a double can hold.</summary>
    private const double MostPowers = 1000;

    /// <summary>Steps on smooth oil and on the roughest, metres.</summary>
    private const double LongestStep = 0.3, ShortestStep = 0.01;

    /// <summary>Change of the oil from board to board that still is smooth, and the most along a step, as shares of the law's scale.</summary>
    private const double SmoothJump = 1.8, SmoothRise = 0.8;

    /// <summary>Change from board to board, the same share, from which on steps shrink with its square: no machine lays such oil.</summary>
    private const double RoughJump = 4;

    private readonly Vector256<double>[] _cells;
    private readonly (double Start, double Rate)[] _bends;
    private readonly Vector256<double> _oiled;
    private readonly Vector256<double> _rise;

    public FrictionGrid(LaneSurface lane, Hand hand)
    {
        BoardMetres = lane.WidthInches * Ball.MetresPerInch / LaneProfile.BoardCount;
        ArrowsMetres = lane.ArrowsFeet * MetresPerFoot;
        _oiled = Vector256.Create(lane.OilFriction);
        _rise = Vector256.Create(lane.DryFriction - lane.OilFriction);
        var (stretches, cells) = (new List<GridStretch>(), new List<Vector256<double>>());
        foreach (var oil in lane.Oil)
        {
            var (start, end) = (oil.StartFeet * MetresPerFoot, Math.Min(oil.EndFeet * MetresPerFoot, EndMetres));
            if (start >= EndMetres)
            {
                break;
            }

            var first = cells.Count;
            AddCells(cells, oil, lane.OilScaleUnits, hand);
            var even = oil.IsEven ? FrictionOf(oil.Start[0] / lane.OilScaleUnits) : double.NaN;
            var longest = lane.StepMetres ?? StepFor(oil, lane.OilScaleUnits);
            double[] cuts = start < ArrowsMetres && ArrowsMetres < end ? [start, ArrowsMetres, end] : [start, end];
            for (var i = 0; i + 1 < cuts.Length; i++)
            {
                var steps = (int)Math.Ceiling((cuts[i + 1] - cuts[i]) / longest);
                stretches.Add(new GridStretch(cuts[i], cuts[i + 1], start, steps, first, even));
            }
        }

        Stretches = [.. stretches];
        _cells = [.. cells];
        _bends = [.. cells.Select((cell, i) => i == 0 ? (0, 0) : (cell[1] - cells[i - 1][1], cell[3] - cells[i - 1][3]))];
    }

    /// <summary>Width of a board.</summary>
    public double BoardMetres { get; }

    /// <summary>Where the board at the arrows is taken.</summary>
    public double ArrowsMetres { get; }

    /// <summary>From the foul line to the head pin, in order.</summary>
    public GridStretch[] Stretches { get; }

    /// <summary>The friction in four places at once.</summary>
    /// <param name="stretch">The stretch that all four lie in.</param>
    /// <param name="metres">Metres past the foul line.</param>
    /// <param name="boards">Boards from the edge of this grid's hand.</param>
    /// <param name="cell">Takes the board below each place, 0 to 39.</param>
    /// <param name="slope">Takes how the oil changes a board there, as <see cref="Slope"/> needs it.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Friction(
        in GridStretch stretch, Vector256<double> metres, Vector256<double> boards, out Vector256<double> cell, out Vector256<double> slope)
    {
        var magic = (boards - Vector256.Create(0.5)) + Vector256.Create(Magic);
        magic = Vector256.Min(Vector256.Max(magic, Vector256.Create(Magic)), Vector256.Create(Magic + LaneProfile.BoardCount));
        cell = magic - Vector256.Create(Magic);
        var over = boards - cell;
        var down = metres - Vector256.Create(stretch.CellStart);

        var index = magic.AsInt64() & Vector256.Create(LowBits);
        ref readonly var first = ref _cells[stretch.FirstCell];
        var (c0, c1, c2, c3) = Transposed(
            Unsafe.Add(ref Unsafe.AsRef(in first), (int)index[0]),
            Unsafe.Add(ref Unsafe.AsRef(in first), (int)index[1]),
            Unsafe.Add(ref Unsafe.AsRef(in first), (int)index[2]),
            Unsafe.Add(ref Unsafe.AsRef(in first), (int)index[3]));
        slope = c1 + (c3 * down);
        var powers = c0 + (c2 * down) + (slope * over);
        return _oiled + (_rise * TwoToMinus(powers));
    }

    /// <summary>How friction changes, when the oil changes: the derivative of the law.</summary>
    /// <param name="friction">The friction there.</param>
    /// <param name="oilSlope">Change of the oil, as <see cref="Friction"/> and <see cref="Bend"/> give it.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Slope(Vector256<double> friction, Vector256<double> oilSlope) =>
        (_oiled - friction) * Vector256.Create(1 / PowersOfTwo) * oilSlope;

    /// <summary>How abruptly the oil bends in the middles of four boards: change of its slope, a board.</summary>
    /// <param name="stretch">The stretch that all four lie in.</param>
    /// <param name="metres">Metres past the foul line.</param>
    /// <param name="line">The board, a whole number from 1 to 39.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Bend(in GridStretch stretch, Vector256<double> metres, Vector256<double> line)
    {
        var index = (line + Vector256.Create(Magic)).AsInt64() & Vector256.Create(LowBits);
        var first = stretch.FirstCell;
        var (a, b, c, d) = (_bends[first + (int)index[0]], _bends[first + (int)index[1]], _bends[first + (int)index[2]], _bends[first + (int)index[3]]);
        return Vector256.Create(a.Start, b.Start, c.Start, d.Start)
            + (Vector256.Create(a.Rate, b.Rate, c.Rate, d.Rate) * (metres - Vector256.Create(stretch.CellStart)));
    }

    /// <summary>The friction at one place.</summary>
    public double FrictionAt(double metres, double board)
    {
        var stretch = Stretches[0];
        foreach (var next in Stretches)
        {
            stretch = next.Start <= metres ? next : stretch;
        }

        return Friction(stretch, Vector256.Create(Math.Clamp(metres, stretch.Start, stretch.End)), Vector256.Create(board), out _, out _)[0];
    }

    private double FrictionOf(double scaledUnits) =>
        (_oiled + (_rise * TwoToMinus(Vector256.Create(scaledUnits * PowersOfTwo))))[0];

    /// <summary>How many powers of two make one power of e.</summary>
    private const double PowersOfTwo = 1.4426950408889634;

    /// <summary>2 to the power of minus <paramref name="z"/>, to about 2e-13 of its value.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> TwoToMinus(Vector256<double> z)
    {
        z = Vector256.Min(z, Vector256.Create(MostPowers));
        var magic = z + Vector256.Create(Magic);
        var rest = (magic - Vector256.Create(Magic)) - z;

        // The series of 2^rest for rest within a half, in pairs, so that the processor works on several at once.
        var rest2 = rest * rest;
        var rest4 = rest2 * rest2;
        var low = (Vector256.Create(1.0) + (Vector256.Create(0.6931471805599453) * rest))
            + ((Vector256.Create(0.2402265069591007) + (Vector256.Create(0.05550410866482158) * rest)) * rest2);
        var middle = (Vector256.Create(0.009618129107628477) + (Vector256.Create(0.0013333558146428443) * rest))
            + ((Vector256.Create(0.00015403530393381608) + (Vector256.Create(1.5252733804059841e-05) * rest)) * rest2);
        var high = (Vector256.Create(1.3215486790144307e-06) + (Vector256.Create(1.0178086009239699e-07) * rest))
            + (Vector256.Create(7.0549116208011233e-09) * rest2);
        var series = low + (rest4 * (middle + (rest4 * high)));

        var exponent = Vector256.ShiftLeft(Vector256.Create(1023L) - (magic.AsInt64() & Vector256.Create(1023L)), 52);
        return series * exponent.AsDouble();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector256<double> C0, Vector256<double> C1, Vector256<double> C2, Vector256<double> C3) Transposed(
        Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d)
    {
        if (Avx.IsSupported)
        {
            var (low, high) = (Avx.UnpackLow(a, b), Avx.UnpackHigh(a, b));
            var (low2, high2) = (Avx.UnpackLow(c, d), Avx.UnpackHigh(c, d));
            return (
                Avx.Permute2x128(low, low2, 0x20), Avx.Permute2x128(high, high2, 0x20),
                Avx.Permute2x128(low, low2, 0x31), Avx.Permute2x128(high, high2, 0x31));
        }

        return (
            Vector256.Create(a[0], b[0], c[0], d[0]), Vector256.Create(a[1], b[1], c[1], d[1]),
            Vector256.Create(a[2], b[2], c[2], d[2]), Vector256.Create(a[3], b[3], c[3], d[3]));
    }

    /// <summary>The longest step that keeps the error on a pattern of this roughness below 1e-3 board (found by trying: see the docs).</summary>
    private static double StepFor(OilStretch oil, double scale)
    {
        var (jump, rate) = (0.0, 0.0);
        var metres = (oil.EndFeet - oil.StartFeet) * MetresPerFoot;
        for (var board = 0; board < LaneProfile.BoardCount; board++)
        {
            rate = Math.Max(rate, Math.Abs(oil.End[board] - oil.Start[board]) / scale / metres);
            if (board > 0)
            {
                jump = Math.Max(jump, Math.Max(Math.Abs(oil.Start[board] - oil.Start[board - 1]), Math.Abs(oil.End[board] - oil.End[board - 1])) / scale);
            }
        }

        return Math.Clamp(Math.Min(LongestStep * SmoothJump / jump * Math.Min(1, RoughJump / jump), SmoothRise / rate), ShortestStep, LongestStep);
    }

    private static void AddCells(List<Vector256<double>> cells, OilStretch oil, double scale, Hand hand)
    {
        var length = (oil.EndFeet - oil.StartFeet) * MetresPerFoot;
        double Powers(ValueList<double> units, int board)
        {
            var counted = Math.Clamp(board, 1, LaneProfile.BoardCount);
            return units[(hand == Hand.Right ? counted : LaneProfile.BoardCount + 1 - counted) - 1] * PowersOfTwo / scale;
        }

        for (var board = 0; board < Across; board++)
        {
            var (here, next) = (Powers(oil.Start, board), Powers(oil.Start, board + 1));
            var (hereEnd, nextEnd) = (Powers(oil.End, board), Powers(oil.End, board + 1));
            cells.Add(Vector256.Create(here, next - here, (hereEnd - here) / length, ((nextEnd - hereEnd) - (next - here)) / length));
        }
    }
}
