namespace AimTrainer.Calibration;

/// <summary>Finds out what is wrong with marks that do not agree: tries what people get wrong, and says what would put it right.</summary>
internal sealed class Diagnosis(IReadOnlyList<CalibrationMark> marks, FitSettings settings)
{
    /// <summary>Among many marks, swapped ones are looked for among those that are missed most: trying all pairs would take minutes.</summary>
    private const int MostTried = 16;

    private readonly MarkArrays _arrays = MarkArrays.Of(marks);
    private readonly MarkWords _words = new(marks, settings);

    public FitRefusal Of(Solution solution) => Swapped(solution) ?? (solution.Unknowns is null ? Folded() : Bent(solution) ?? OneWrong(solution) ?? Disagreeing(solution));

    private FitRefusal? Swapped(Solution solution)
    {
        var candidates = Suspects(solution);
        var good = (from first in candidates
                    from second in candidates
                    where first < second
                    let swapped = Solution.Of(_arrays.Swapped(first, second), settings.Picture, settings.DistortionTerms)
                    where swapped.IsGood(settings)
                    orderby swapped.Rms
                    select (first, second)).ToList();
        if (good.Count == 0)
        {
            return null;
        }

        var (a, b) = good[0];
        var others = good.Count == 1 ? "" : $" (or marks {string.Join("; or marks ", good.Skip(1).Select(pair => MarkWords.Numbers([pair.first, pair.second])))})";
        return new FitRefusal(
            FitRefusalReason.SwappedMarks, [a, b], $"{_words[a]} and {_words[b]} have each other's pixels{others}: with them exchanged all marks agree",
            "Exchange them, or place both again");
    }

    private static FitRefusal Folded() => new(
        FitRefusalReason.FoldsTheLane, [], "the only map through these marks folds the lane over on itself: one mark lies on the wrong side of a line through two others",
        "See that each pixel belongs to the mark it is named for, and place the wrong one again");

    private FitRefusal? Bent(Solution solution)
    {
        for (var terms = settings.DistortionTerms + 1; terms <= FitSettings.MostTerms && marks.Count >= FitSettings.MarksNeeded(terms); terms++)
        {
            var bent = Solution.Of(_arrays, settings.Picture, terms);
            if (bent.IsGood(settings))
            {
                return new FitRefusal(
                    FitRefusalReason.ResidualOverLimit, [.. Worst(solution, 1)],
                    FormattableString.Invariant($"{Says(solution)}; with {terms} distortion term(s) they would agree to {bent.Rms:0.##} px: the lens bends the picture"),
                    FormattableString.Invariant($"Fit {terms} distortion term(s)"));
            }
        }

        return null;
    }

    private FitRefusal? OneWrong(Solution solution)
    {
        // With five marks any one left out leaves four, which always agree: that tells nothing.
        if (marks.Count - 1 <= FitSettings.MarksNeeded(settings.DistortionTerms))
        {
            return null;
        }

        var wrong = Suspects(solution).Where(mark => _arrays.Without(mark) is var rest && !MarkChecks.AreInALine(rest)
            && Solution.Of(rest, settings.Picture, settings.DistortionTerms).IsGood(settings)).ToList();
        if (wrong.Count != 1)
        {
            return null;
        }

        var rest = Solution.Of(_arrays.Without(wrong[0]), settings.Picture, settings.DistortionTerms);
        var map = new ProjectorMap { Picture = settings.Picture, Homography = rest.Problem.MapOf(rest.Unknowns).Matrix, Distortion = rest.Problem.MapOf(rest.Unknowns).Lens };
        var mark = marks[wrong[0]];
        return new FitRefusal(
            FitRefusalReason.ResidualOverLimit, [wrong[0]],
            $"{Says(solution)}. All others agree without {_words[wrong[0]]}: it is at {LaneScale.Words(mark.Pixel)}, they put it at {LaneScale.Words(map.PixelOf(mark.Lane))}",
            "Place that mark again, or drop it");
    }

    private FitRefusal Disagreeing(Solution solution)
    {
        var worst = Worst(solution, 1)[0];
        return new FitRefusal(
            FitRefusalReason.ResidualOverLimit, [worst], $"{Says(solution)}; {_words[worst]} is missed most, which need not be the wrong one",
            "Place that mark and its neighbours again; check their boards and distances in the lane profile against the lane");
    }

    private string Says(Solution solution) => FormattableString.Invariant(
        $"the marks do not agree: off by {solution.Rms:0.#} px rms (allowed {settings.RmsLimitPixels:0.#}), {solution.Worst:0.#} px at worst (allowed {settings.WorstLimitPixels:0.#})");

    private List<int> Suspects(Solution solution) =>
        marks.Count <= MostTried || solution.Unknowns is null ? [.. Enumerable.Range(0, Math.Min(marks.Count, MostTried))] : Worst(solution, MostTried);

    private static List<int> Worst(Solution solution, int count)
    {
        var errors = solution.Errors();
        double Square(int i) => (errors[2 * i] * errors[2 * i]) + (errors[(2 * i) + 1] * errors[(2 * i) + 1]);
        return [.. Enumerable.Range(0, errors.Length / 2).OrderByDescending(Square).Take(count).Order()];
    }
}
