using System.Globalization;

namespace AimTrainer.Web.Pages;

/// <summary>The shapes by which balls are told apart, beside colour and line: a dot, a diamond, a square, a triangle.</summary>
internal static class BallShape
{
    /// <summary>The outline of a mark.</summary>
    /// <param name="place">The ball's place among the balls, from 0.</param>
    /// <param name="x">Its middle.</param>
    /// <param name="y">Its middle.</param>
    /// <param name="r">Half its size.</param>
    public static string Of(int place, double x, double y, double r) => (place % 4) switch
    {
        0 => string.Create(CultureInfo.InvariantCulture, $"M{x - r:0.##} {y:0.##}a{r} {r} 0 1 0 {2 * r} 0a{r} {r} 0 1 0 {-2 * r} 0z"),
        1 => string.Create(CultureInfo.InvariantCulture, $"M{x:0.##} {y - (1.25 * r):0.##}l{1.1 * r:0.##} {1.25 * r:0.##}l{-1.1 * r:0.##} {1.25 * r:0.##}l{-1.1 * r:0.##} {-1.25 * r:0.##}z"),
        2 => string.Create(CultureInfo.InvariantCulture, $"M{x - (0.9 * r):0.##} {y - (0.9 * r):0.##}h{1.8 * r:0.##}v{1.8 * r:0.##}h{-1.8 * r:0.##}z"),
        _ => string.Create(CultureInfo.InvariantCulture, $"M{x:0.##} {y - (1.1 * r):0.##}l{1.1 * r:0.##} {1.9 * r:0.##}h{-2.2 * r:0.##}z"),
    };
}
