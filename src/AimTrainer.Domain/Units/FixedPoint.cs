using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>Rounds a number to a whole count of a small unit, ties to even, on its decimal digits.</summary>
/// <remarks>
/// The number is first read as its shortest decimal (15 significant digits), so that 10.125 from a file rounds as the decimal
/// that a person wrote, not as the binary fraction nearest to it.
/// </remarks>
internal static class FixedPoint
{
    public static int TenThousandths(double value, double minimum, double maximum, string name) =>
        Round(value, 4, minimum, maximum, name, 10_000);

    public static int Hundredths(double value, double minimum, double maximum, string name) =>
        Round(value, 2, minimum, maximum, name, 100);

    /// <summary>Checks that a number is one, and lies in an inclusive range.</summary>
    /// <returns>The number; 0 for minus 0, so that equal values are the same bytes wherever they are kept.</returns>
    public static double InRange(double value, double minimum, double maximum, string name)
    {
        if (!(value >= minimum && value <= maximum))
        {
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"allowed: {minimum} to {maximum}"));
        }

        return WithoutMinusZero(value);
    }

    /// <summary>Checks that a count of small units lies in an inclusive range.</summary>
    public static int InRange(int count, double minimum, double maximum, int scale, string name)
    {
        if (count < minimum * scale || count > maximum * scale)
        {
            throw new ArgumentOutOfRangeException(name, (decimal)count / scale, FormattableString.Invariant($"allowed: {minimum} to {maximum}"));
        }

        return count;
    }

    /// <summary>Up to four decimals, invariant; what rounds to nothing reads 0, never -0.</summary>
    public static string Text(double value)
    {
        var text = value.ToString("0.####", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>A double rounded to some decimals, ties to even, on its decimal digits.</summary>
    public static double Rounded(double value, int decimals) =>
        WithoutMinusZero((double)Math.Round((decimal)value, decimals, MidpointRounding.ToEven));

    private static double WithoutMinusZero(double value) => value == 0 ? 0 : value;

    private static int Round(double value, int decimals, double minimum, double maximum, string name, int scale)
    {
        InRange(value, minimum, maximum, name);
        return (int)(Math.Round((decimal)value, decimals, MidpointRounding.ToEven) * scale);
    }
}
