namespace AimTrainer.Calibration;

/// <summary>Marks as plain numbers for number-crunching: inches on the lane, pixels in the picture.</summary>
internal sealed record MarkArrays(double[] Across, double[] Down, double[] X, double[] Y)
{
    public int Count => Across.Length;

    public static MarkArrays Of(IReadOnlyList<CalibrationMark> marks) => new(
        [.. marks.Select(mark => mark.Lane.Across.Value)], [.. marks.Select(mark => mark.Lane.Down.Value * 12)],
        [.. marks.Select(mark => mark.Pixel.X)], [.. marks.Select(mark => mark.Pixel.Y)]);

    public MarkArrays Without(int mark) => new(Less(Across, mark), Less(Down, mark), Less(X, mark), Less(Y, mark));

    public MarkArrays Swapped(int first, int second)
    {
        var (x, y) = ((double[])X.Clone(), (double[])Y.Clone());
        (x[first], x[second]) = (x[second], x[first]);
        (y[first], y[second]) = (y[second], y[first]);
        return this with { X = x, Y = y };
    }

    private static double[] Less(double[] values, int index) => [.. values.AsSpan(0, index), .. values.AsSpan(index + 1)];
}
