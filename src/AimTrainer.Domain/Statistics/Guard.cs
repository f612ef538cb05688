using System.Runtime.CompilerServices;

namespace AimTrainer.Domain;

/// <summary>Checks of arguments: what was found and what is allowed, in one line.</summary>
internal static class Guard
{
    /// <summary>A finite number above 0.</summary>
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 && value <= double.MaxValue ? value : throw new ArgumentOutOfRangeException(name, value, "allowed: more than 0, finite");

    /// <summary>A number strictly between 0 and 1.</summary>
    public static double Share(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 && value < 1 ? value : throw new ArgumentOutOfRangeException(name, value, "allowed: more than 0, less than 1");

    /// <summary>A whole number in an inclusive range.</summary>
    public static int InRange(int value, int low, int high, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"allowed: {low} to {high}"));
}
