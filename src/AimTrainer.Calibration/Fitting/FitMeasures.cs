using AimTrainer.Domain;
using MathNet.Numerics.LinearAlgebra;

namespace AimTrainer.Calibration;

/// <summary>Works out how good a fitted map is.</summary>
internal static class FitMeasures
{
    /// <summary>Beyond this ratio of singular values the marks do not tell the unknowns from one another.</summary>
    public const double MostCondition = 1e9;

    private const double EveryFeet = 5;

    public static MapFit Of(IReadOnlyList<CalibrationMark> marks, FitSettings settings, Solution solution, ProjectorMap map, ParameterSpread spread)
    {
        var errors = solution.Errors();
        var arrays = MarkArrays.Of(marks);

        // Only where all but two marks lie in a line can leaving one out leave too few beside it.
        var mayBeInALine = MarkChecks.AreInALine(arrays, mostOff: 2);
        var measured = marks.Select((mark, i) =>
            Error(mark, errors[2 * i], errors[(2 * i) + 1], map, settings, LeaveOneOut(arrays, i, solution, mayBeInALine))).ToValueList();
        var free = solution.Problem.Equations - solution.Problem.Unknowns;
        double? sigma = free > 0 ? Math.Sqrt(solution.SumOfSquares / free) : null;
        var left = measured.AsEnumerable().Select(mark => mark.LeaveOneOutPixels).OfType<double>().ToList();
        var boards = measured.AsEnumerable().Select(mark => mark.AcrossBoards).ToList();
        var known = boards.TrueForAll(board => board is not null);
        var quality = new FitQuality(
            solution.Rms, solution.Worst, known ? Rms(boards.OfType<double>()) : null, known ? boards.OfType<double>().Max(Math.Abs) : null,
            left.Count > 0 ? Rms(left) : null, left.Count > 0 ? left.Max() : null, sigma, solution.Condition);
        var distances = Stops(map.Stretch).Select(feet => At(feet, map, settings.LaneWidth, solution, spread, sigma)).ToValueList();
        return new MapFit(map, settings.LaneWidth, settings.DistortionTerms, measured, quality, distances);
    }

    /// <summary>The spread of the unknowns; null when the marks do not settle them.</summary>
    public static ParameterSpread? Spread(Solution solution)
    {
        var (rows, columns) = (solution.Problem.Equations, solution.Problem.Unknowns);
        var slopes = new double[rows * columns];
        solution.Problem.Evaluate(solution.Unknowns, new double[rows], slopes);
        var matrix = Matrix<double>.Build.DenseOfRowMajor(rows, columns, slopes);
        var scales = matrix.ColumnNorms(2);
        if (scales.Exists(scale => scale == 0))
        {
            return null;
        }

        // The covariance is (J'J)^-1; by the singular values of the triangular factor it keeps its digits.
        var svd = matrix.MapIndexed((_, column, value) => value / scales[column]).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).R.Svd(computeVectors: true);
        var smallest = svd.S[columns - 1];
        if (!(smallest > 0))
        {
            return null;
        }

        var half = svd.VT.MapIndexed((row, column, value) => value / svd.S[row] / scales[column]);
        return new ParameterSpread(half.TransposeThisAndMultiply(half), svd.S[0] / smallest);
    }

    private static MarkError Error(CalibrationMark mark, double x, double y, ProjectorMap map, FitSettings settings, double? left)
    {
        // The map's error at a mark: where it lights when asked for the mark, less the mark. The pixel that was set lights the mark itself,
        // so where the map takes that pixel lies as far off, the other way.
        var taken = map.LanePointOf(mark.Pixel);
        return new MarkError(
            mark, x, y,
            taken is { } a ? LaneScale.BoardsIn(mark.Lane.Across.Value - a.Across.Value, settings.LaneWidth) : null,
            taken is { } b ? (mark.Lane.Down.Value - b.Down.Value) * 12 : null,
            left);
    }

    private static double? LeaveOneOut(MarkArrays marks, int mark, Solution solution, bool mayBeInALine)
    {
        if (solution.Problem.Equations - 2 < solution.Problem.Unknowns || (mayBeInALine && MarkChecks.AreInALine(marks.Without(mark))))
        {
            return null;
        }

        var rest = solution.Problem.Without(mark);
        if (LeastSquares.Minimise(rest, solution.Unknowns!) is not { } end
            || !IsSettled(new Solution(rest, end.Unknowns, end.SumOfSquares, solution.Condition))
            || rest.Pixel(end.Unknowns, marks.Across[mark], marks.Down[mark], []) is not { } pixel)
        {
            return null;
        }

        var (x, y) = (pixel.X - marks.X[mark], pixel.Y - marks.Y[mark]);
        return Math.Sqrt((x * x) + (y * y));
    }

    /// <summary>Without distortion, marks that do not lie in a line settle the map; a lens can stay open whatever they do.</summary>
    private static bool IsSettled(Solution solution) => solution.Problem.Terms == 0 || Spread(solution) is { Condition: < MostCondition };

    private static IEnumerable<Feet> Stops(LaneStretch stretch)
    {
        var first = Math.Ceiling(stretch.From.Value / EveryFeet) * EveryFeet;
        List<double> stops = [stretch.From.Value];
        for (var feet = first; feet <= stretch.To.Value; feet += EveryFeet)
        {
            stops.Add(feet);
        }

        stops.Add(stretch.To.Value);
        return stops.Distinct().Select(Feet.FromFeet);
    }

    private static DistanceQuality At(Feet distance, ProjectorMap map, Inches laneWidth, Solution solution, ParameterSpread spread, double? sigma)
    {
        var size = map.PixelSizeAt(new LanePoint(Inches.FromInches(laneWidth.Value / 2), distance));
        var boards = LaneScale.BoardsIn(size.AcrossInches, laneWidth);
        var growth = Math.Sqrt((Variance(0, distance, solution, spread) + Variance(laneWidth.Value, distance, solution, spread)) / 2);
        return new DistanceQuality(distance, boards, size.AlongInches, growth, growth * sigma * boards);
    }

    private static double Variance(double across, Feet distance, Solution solution, ParameterSpread spread)
    {
        var columns = solution.Problem.Unknowns;
        var rows = new double[2 * columns];
        if (solution.Problem.Pixel(solution.Unknowns, across, distance.Value * 12, rows) is null)
        {
            return double.PositiveInfinity;
        }

        var slopes = Matrix<double>.Build.DenseOfRowMajor(2, columns, rows);
        var covariance = slopes * spread.Covariance.TransposeAndMultiply(slopes);
        return covariance.Trace() / 2;
    }

    private static double Rms(IEnumerable<double> values) => Math.Sqrt(values.Average(value => value * value));
}
