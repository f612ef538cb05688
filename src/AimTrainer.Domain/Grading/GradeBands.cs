namespace AimTrainer.Domain;

/// <summary>The bands of a drill, tightest first; whatever lies in none of them is a miss, worth nothing.</summary>
public sealed record GradeBands
{
    /// <summary>The award for a crossing outside every band.</summary>
    public static Grade Miss { get; } = new("miss", 0, false);

    /// <summary>
    /// The bands used when a drill gives none: <c>centre</c> up to a quarter of the width, <c>hit</c> up to half of it,
    /// <c>close</c> up to half of it plus one board; 3, 2 and 1 points; held by the first two.
    /// </summary>
    public static GradeBands Default { get; } = new(
    [
        new GradeBand(new Grade("centre", 3, true), 0.25m, BoardOffset.Zero),
        new GradeBand(new Grade("hit", 2, true), 0.5m, BoardOffset.Zero),
        new GradeBand(new Grade("close", 1, false), 0.5m, BoardOffset.FromBoards(1)),
    ]);

    /// <summary>Makes a set of bands.</summary>
    /// <param name="bands">
    /// At least one, tightest first: neither share nor boards fall, points do not rise, and no band holds the target after one
    /// that does not. Shares, boards and points are 0 or more, so that no crossing is worth less than a miss; each name is used
    /// once, and "miss" is taken.
    /// </param>
    /// <exception cref="ArgumentException">The bands are not so.</exception>
    public GradeBands(ValueList<GradeBand> bands)
    {
        if (bands.Count == 0)
        {
            throw new ArgumentException("at least one band is needed", nameof(bands));
        }

        for (var i = 1; i < bands.Count; i++)
        {
            var (tighter, wider) = (bands[i - 1], bands[i]);
            if (wider.WidthShare < tighter.WidthShare || wider.Beyond < tighter.Beyond
                || wider.Award.Points > tighter.Award.Points || (wider.Award.Holds && !tighter.Award.Holds))
            {
                throw new ArgumentException($"band {i + 1} must be wider than band {i}, worth no more, and hold only if that one does", nameof(bands));
            }
        }

        // Shares and boards never fall and points never rise, so the first and the last band speak for all.
        if (bands[0].WidthShare < 0 || bands[0].Beyond < BoardOffset.Zero || bands[^1].Award.Points < 0)
        {
            throw new ArgumentException("shares, boards and points of a band are 0 or more", nameof(bands));
        }

        if (bands.AsEnumerable().Select(band => band.Award.Name).Append(Miss.Name).Distinct(StringComparer.Ordinal).Count() <= bands.Count)
        {
            throw new ArgumentException("each band needs a name of its own, other than \"miss\"", nameof(bands));
        }

        Bands = bands;
    }

    /// <summary>The bands, tightest first.</summary>
    public ValueList<GradeBand> Bands { get; }

    /// <summary>What a miss of this size is awarded on a target of this width.</summary>
    public Grade GradeOf(BoardOffset miss, BoardOffset width)
    {
        var size = miss.Abs().ExactBoards;
        foreach (var band in Bands)
        {
            if (size <= band.ReachBoards(width))
            {
                return band.Award;
            }
        }

        return Miss;
    }
}
