namespace AimTrainer.Analysis.Tests;

/// <summary>How many digits of a certified value were reached, as the certifying institute counts them.</summary>
internal static class Digits
{
    /// <summary>Minus the decimal logarithm of the relative error; 17 when there is none.</summary>
    public static double Reached(double expected, double? found) =>
        found is not { } value ? 0 : value == expected ? 17 : -Math.Log10(Math.Abs((value - expected) / expected));

    /// <summary>Fails unless at least so many digits were reached.</summary>
    public static void AtLeast(double digits, double expected, double? found) =>
        Assert.True(Reached(expected, found) >= digits, FormattableString.Invariant($"{found:R} instead of {expected:R}: {Reached(expected, found):0.0} digits, not {digits}"));
}
