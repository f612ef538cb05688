using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Fits the map of a projector to marks: linear equations first, then the least squares of the distances in the picture. Pure.</summary>
public static class MapFitter
{
    /// <summary>Fits a map, or says why the marks give none.</summary>
    /// <param name="marks">Places on the lane and the pixels that light them.</param>
    /// <param name="settings">Picture, lane, stretch, limits.</param>
    /// <exception cref="ArgumentOutOfRangeException">A picture of no pixels, or a number of distortion terms that is not 0, 1 or 2.</exception>
    public static FitOutcome Fit(IReadOnlyList<CalibrationMark> marks, FitSettings settings)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.Picture.Width, 1, nameof(settings));
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.Picture.Height, 1, nameof(settings));
        ArgumentOutOfRangeException.ThrowIfNegative(settings.DistortionTerms, nameof(settings));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(settings.DistortionTerms, FitSettings.MostTerms, nameof(settings));
        var refusals = MarkChecks.Refusals(marks, settings).ToValueList();
        if (refusals.Count > 0)
        {
            return new FitOutcome(null, refusals);
        }

        var solution = Solution.Of(MarkArrays.Of(marks), settings.Picture, settings.DistortionTerms);
        if (solution.Unknowns is null || !solution.IsWithin(settings))
        {
            return new FitOutcome(null, [new Diagnosis(marks, settings).Of(solution)]);
        }

        if (!solution.KeepsHand)
        {
            return new FitOutcome(null, [Mirrored(marks.Count)]);
        }

        if (FitMeasures.Spread(solution) is not { } spread || spread.Condition > FitMeasures.MostCondition)
        {
            return new FitOutcome(null, [Unclear(settings)]);
        }

        var (matrix, lens) = solution.Problem.MapOf(solution.Unknowns);
        var map = new ProjectorMap { Picture = settings.Picture, Homography = matrix, Distortion = lens, Stretch = settings.Stretch ?? MarkedStretch(marks) };
        if (Folds(map, settings) is { } fold)
        {
            return new FitOutcome(null, [fold]);
        }

        map = settings.Stretch is null ? map with { Stretch = VisibleStretch.Of(map, settings.LaneWidth) } : map;
        return new FitOutcome(FitMeasures.Of(marks, settings, solution, map, spread), []);
    }

    private static LaneStretch MarkedStretch(IReadOnlyList<CalibrationMark> marks) => new(
        marks.Min(mark => mark.Lane.Down), marks.Max(mark => mark.Lane.Down), Feet.FromFeet(0), Feet.FromFeet(0));

    private static FitRefusal Mirrored(int marks) => new(
        FitRefusalReason.Mirrored, [],
        "the picture shows the lane as in a mirror" + (marks == 4 ? ", or two marks that lie across from one another have each other's pixels" : ""),
        "Set the projector to front projection (on the ceiling: front, ceiling), or see that left and right of the marks are not mixed up");

    private static FitRefusal Unclear(FitSettings settings) => settings.DistortionTerms > 0
        ? new FitRefusal(
            FitRefusalReason.DistortionUnclear, [], "the marks do not tell a bent lens from another place of the projector",
            "Place marks at very different distances from the middle of the picture, or fit fewer distortion terms")
        : new FitRefusal(
            FitRefusalReason.InALine, [], "the marks lie so nearly in a line that they settle no map", "Place two more marks well off that line, near both edges of the lane");

    /// <summary>The lane is a rectangle and the horizon a line: it crosses the lane when it crosses an edge, and then corners lie on both sides.</summary>
    private static FitRefusal? Folds(ProjectorMap map, FitSettings settings)
    {
        if (!map.Distortion.CoversPicture)
        {
            return new FitRefusal(
                FitRefusalReason.FoldsTheLane, [],
                FormattableString.Invariant($"the lens that fits best folds the picture over on itself, {map.Distortion.Reach:0.##} half diagonals from its middle"),
                "Fit fewer distortion terms, or place marks out to the corners of the picture");
        }

        foreach (var end in (ReadOnlySpan<Feet>)[map.Stretch.From, map.Stretch.To])
        {
            foreach (var across in (ReadOnlySpan<double>)[0, settings.LaneWidth.Value])
            {
                if (!(map.Homography.Third(across, end.Value * 12) > 0))
                {
                    var horizon = -((map.Homography.M31 * across) + map.Homography.M33) / map.Homography.M32 / 12;
                    var edge = across == 0 ? "right" : "left";
                    var stretch = $"{map.Stretch.From} to {map.Stretch.To} ft";
                    return new FitRefusal(
                        FitRefusalReason.FoldsTheLane, [],
                        FormattableString.Invariant($"the map turns the lane over at {horizon:0.#} ft along its {edge} edge, within the stretch of {stretch}"),
                        "The projector cannot light what lies behind it: give a stretch that ends before that, or place the marks again if it should not lie there");
                }
            }
        }

        return null;
    }
}
