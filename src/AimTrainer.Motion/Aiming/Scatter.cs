using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>How a bowler's throws scatter around what was meant: normal, with spreads (one standard deviation) and correlations.</summary>
public sealed class Scatter
{
    /// <summary>Kinds of scatter.</summary>
    public const int Parts = 4;

    /// <summary>Widest spreads: boards, degrees, mph, rpm.</summary>
    private static readonly ValueList<double> _widest = [10, 5, 5, 200];

    private static readonly ValueList<string> _names = ["laydown", "launch angle", "speed", "revs"];

    private readonly double[,] _factor;

    private Scatter(ValueList<double> spreads, ValueList<double> correlations, double[,] factor) => (Spreads, Correlations, _factor) = (spreads, correlations, factor);

    /// <summary>Spread of laydown (boards), launch angle (degrees), speed (mph), revs (rpm).</summary>
    public ValueList<double> Spreads { get; }

    /// <summary>Correlations in the same order, row by row.</summary>
    public ValueList<double> Correlations { get; }

    /// <summary>Makes a scatter.</summary>
    /// <param name="spreads">Of laydown in boards (0 to 10), launch angle in degrees (0 to 5), speed in mph (0 to 5), revs in rpm (0 to 200).</param>
    /// <param name="correlations">Sixteen, row by row; none when null.</param>
    /// <exception cref="ArgumentException">Outside the ranges, or no correlations that can be.</exception>
    public static Scatter Of(ValueList<double> spreads, ValueList<double>? correlations = null)
    {
        correlations ??= Enumerable.Range(0, Parts * Parts).Select(i => i % (Parts + 1) == 0 ? 1.0 : 0).ToValueList();
        if (spreads.Count != Parts || correlations.Count != Parts * Parts)
        {
            throw new ArgumentException($"{spreads.Count} spreads and {correlations.Count} correlations; allowed: {Parts} and {Parts * Parts}");
        }

        var matrix = new double[Parts, Parts];
        for (var i = 0; i < Parts; i++)
        {
            if (!(spreads[i] >= 0 && spreads[i] <= _widest[i]))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"the spread of the {_names[i]} is {spreads[i]}; allowed: 0 to {_widest[i]}"));
            }

            for (var j = 0; j < Parts; j++)
            {
                matrix[i, j] = correlations[(i * Parts) + j];
                if (matrix[i, j] != correlations[(j * Parts) + i] || !(Math.Abs(matrix[i, j]) <= 1) || (i == j && matrix[i, j] != 1))
                {
                    throw new ArgumentException("correlations that are not the same both ways, from -1 to 1, with 1 for each with itself");
                }
            }
        }

        return SmallMatrix.Factor(matrix) is { } factor
            ? new Scatter(spreads, correlations, factor)
            : throw new ArgumentException("correlations that no scatter can have: together they contradict one another, or two parts are the same");
    }

    /// <summary>The same with one spread times a number; correlations stay.</summary>
    /// <exception cref="ArgumentException">The spread is then outside its range.</exception>
    public Scatter Times(ScatterPart part, double factor) =>
        Of(Spreads.AsEnumerable().Select((spread, i) => i == (int)part ? spread * factor : spread).ToValueList(), Correlations);

    /// <summary>How far one throw is off, from four independent standard normal numbers.</summary>
    internal (double Boards, double Degrees, double Mph, double Rpm) Off(ReadOnlySpan<double> normal)
    {
        Span<double> off = stackalloc double[Parts];
        for (var i = 0; i < Parts; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                off[i] += _factor[i, j] * normal[j];
            }

            off[i] *= Spreads[i];
        }

        return (off[0], off[1], off[2], off[3]);
    }
}
