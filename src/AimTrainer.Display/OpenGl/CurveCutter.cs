namespace AimTrainer.Display;

/// <summary>Cuts curves into straight pieces so short that none is further than 0.005 pixels from the curve, where it will be drawn.</summary>
internal sealed class CurveCutter(IProjection projection)
{
    private const double Tolerance = 0.005;
    private const int MostHalvings = 7;

    /// <summary>Adds the curve's points from its start to before its end.</summary>
    public void Cut<TCurve>(TCurve curve, int pieces, List<XY> into)
        where TCurve : struct, ICurve
    {
        // A piece that bends both ways can have its middle on the chord, so it is never judged whole.
        for (var i = 0; i < pieces; i++)
        {
            var (from, to) = ((double)i / pieces, (i + 1.0) / pieces);
            var (start, end) = (curve.At(from), curve.At(to));
            into.Add(start);
            Halve(curve, from, to, projection.Flat(start), projection.Flat(end), MostHalvings, into);
        }
    }

    private void Halve<TCurve>(TCurve curve, double from, double to, XY start, XY end, int halvings, List<XY> into)
        where TCurve : struct, ICurve
    {
        var part = (from + to) / 2;
        var point = curve.At(part);
        var middle = projection.Flat(point);
        if (halvings == 0 || (start.IsFinite && middle.IsFinite && end.IsFinite && FromChord(start, end, middle) <= Tolerance))
        {
            return;
        }

        Halve(curve, from, part, start, middle, halvings - 1, into);
        into.Add(point);
        Halve(curve, part, to, middle, end, halvings - 1, into);
    }

    private static double FromChord(XY start, XY end, XY point)
    {
        var (chord, to) = (end - start, point - start);
        var length = chord.Length;
        return length < 1e-9 ? to.Length : Math.Abs((chord.X * to.Y) - (chord.Y * to.X)) / length;
    }
}
