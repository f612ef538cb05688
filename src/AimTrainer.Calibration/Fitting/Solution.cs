namespace AimTrainer.Calibration;

/// <summary>The best map for some marks, whether it is any good or not.</summary>
/// <param name="Problem">What was solved.</param>
/// <param name="Unknowns">The best unknowns; null when no map keeps all marks before its horizon.</param>
/// <param name="SumOfSquares">The sum of squared errors, in square pixels.</param>
/// <param name="Condition">Condition of the linear equations.</param>
internal sealed record Solution(Reprojection Problem, double[]? Unknowns, double SumOfSquares, double Condition)
{
    /// <summary>First terms to start from, from barrel to cushion.</summary>
    private static readonly double[] FirstTerms = [0, 0.02, -0.02, 0.05, -0.05, 0.1, -0.1];

    private static readonly double[] NoTerms = [0];

    /// <summary>From how many of the starts, the best first, the steps go down.</summary>
    private const int MostDescents = 3;

    /// <summary>Root mean square distance, in pixels.</summary>
    public double Rms => Math.Sqrt(SumOfSquares / (Problem.Equations / 2.0));

    public static Solution Of(MarkArrays marks, PictureSize picture, int terms)
    {
        var problem = new Reprojection(marks, picture, terms);
        var starts = (terms == 0 ? NoTerms : FirstTerms).Select(first => problem.Start(new LensDistortion(first, 0))).OfType<MapStart>()
            .OrderBy(start => start.SumOfSquares).ToList();
        var condition = starts.Count > 0 ? starts[0].Condition : double.PositiveInfinity;
        var (best, sum) = ((double[]?)null, double.PositiveInfinity);
        foreach (var start in starts.Take(MostDescents))
        {
            if (LeastSquares.Minimise(problem, start.Unknowns) is { } end && end.SumOfSquares < sum)
            {
                (best, sum) = end;
            }
        }

        // Four marks have one map only, and it was just found to fold; more marks may have a map that misses some of them.
        if (best is null && marks.Count > 4 && LeastSquares.Minimise(problem, problem.FlatStart()) is { } flat)
        {
            (best, sum) = flat;
        }

        return new Solution(problem, best, sum, condition);
    }

    /// <summary>The largest distance of a mark, in pixels.</summary>
    public double Worst
    {
        get
        {
            var errors = Errors();
            return Enumerable.Range(0, errors.Length / 2).Max(i => Math.Sqrt((errors[2 * i] * errors[2 * i]) + (errors[(2 * i) + 1] * errors[(2 * i) + 1])));
        }
    }

    /// <summary>The errors at the solution, two for each mark.</summary>
    public double[] Errors()
    {
        var errors = new double[Problem.Equations];
        Problem.Evaluate(Unknowns ?? throw new InvalidOperationException("there is no map"), errors, []);
        return errors;
    }

    /// <summary>Whether there is a map that keeps the lane's handedness and misses no mark by more than the limits.</summary>
    public bool IsGood(FitSettings settings) => Unknowns is { } p && KeepsHand && IsWithin(settings);

    /// <summary>Whether no mark is missed by more than the limits.</summary>
    public bool IsWithin(FitSettings settings) => Rms <= settings.RmsLimitPixels && Worst <= settings.WorstLimitPixels;

    /// <summary>
    /// Whether the picture shows the lane as it is and not as in a mirror. Lane inches count from right to left and downlane, pixels from
    /// left to right and down: a picture that is the right way round turns one sense into the same, however it is turned.
    /// </summary>
    public bool KeepsHand => Problem.MapOf(Unknowns).Matrix.Determinant > 0;
}
