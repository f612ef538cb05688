using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Builds the stretches of a <see cref="LaneSurface"/> from the ways in which people write a pattern down.</summary>
public static class OilPattern
{
    /// <summary>Most oil on a board. More than any lane carries: a two-zone lane is written with very much oil.</summary>
    public const double MostUnits = 1e9;

    /// <summary>No oil anywhere.</summary>
    public static ValueList<OilStretch> None { get; } =
        [new OilStretch(0, LaneSurface.EndFeet, new double[LaneProfile.BoardCount].ToValueList(), new double[LaneProfile.BoardCount].ToValueList())];

    /// <summary>Oil known at some distances, straight lines between them. Before the first it is as there.</summary>
    /// <param name="rows">Distances in rising order, and the units on boards 1 to 39 from the right edge; at least one.</param>
    /// <param name="inSteps">Whether each row holds unchanged until the next, instead of the straight lines.</param>
    /// <exception cref="ArgumentException">No rows, a row that has not 39 numbers, or distances that do not rise.</exception>
    public static ValueList<OilStretch> FromRows(IReadOnlyList<(double Feet, ValueList<double> Oil)> rows, bool inSteps)
    {
        if (rows.Count == 0)
        {
            throw new ArgumentException("there are no rows", nameof(rows));
        }

        var stretches = new List<OilStretch>();
        if (rows[0].Feet > 0)
        {
            stretches.Add(new OilStretch(0, rows[0].Feet, rows[0].Oil, rows[0].Oil));
        }

        for (var i = 0; i < rows.Count; i++)
        {
            var last = i == rows.Count - 1;
            var end = last ? Math.Max(LaneSurface.EndFeet, rows[i].Feet + 1) : rows[i + 1].Feet;
            stretches.Add(new OilStretch(rows[i].Feet, end, rows[i].Oil, last || inSteps ? rows[i].Oil : rows[i + 1].Oil));
        }

        return stretches.ToValueList();
    }

    /// <summary>What some passes of a machine leave: their units add up.</summary>
    /// <param name="passes">The passes in any order; at least one.</param>
    /// <exception cref="ArgumentException">No passes.</exception>
    public static ValueList<OilStretch> FromPasses(IReadOnlyList<OilPass> passes)
    {
        if (passes.Count == 0)
        {
            throw new ArgumentException("there are no passes", nameof(passes));
        }

        var cuts = passes.SelectMany(pass => new[] { pass.StartFeet, pass.EndFeet }).Append(0).Append(LaneSurface.EndFeet).Distinct().Order().ToList();
        return Enumerable.Range(0, cuts.Count - 1).Select(i =>
        {
            var lying = passes.Where(pass => pass.StartFeet <= cuts[i] && pass.EndFeet >= cuts[i + 1]).ToList();
            return new OilStretch(cuts[i], cuts[i + 1], Laid(lying, cuts[i]), Laid(lying, cuts[i + 1]));
        }).ToValueList();
    }

    private static ValueList<double> Laid(List<OilPass> passes, double feet) => Enumerable.Range(1, LaneProfile.BoardCount)
        .Select(board => passes.Where(pass => board >= pass.FromBoard && board <= pass.ToBoard)
            .Sum(pass => pass.StartUnits + ((pass.EndUnits - pass.StartUnits) * (feet - pass.StartFeet) / (pass.EndFeet - pass.StartFeet))))
        .ToValueList();
}
