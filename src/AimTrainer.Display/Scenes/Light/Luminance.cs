namespace AimTrainer.Display;

/// <summary>How much light a colour gives, as a share of white.</summary>
/// <remarks>
/// Source: W3C Recommendation "Web Content Accessibility Guidelines (WCAG) 2.1", definitions of relative luminance and contrast
/// ratio, with the threshold 0.04045 of IEC 61966-2-1 (the two differ below the last digit of an 8-bit colour).
/// </remarks>
public static class Luminance
{
    /// <summary>Relative luminance, 0 (black) to 1 (white), opacity aside.</summary>
    public static double Of(Colour colour)
    {
        var (red, green, blue) = Linear(colour);
        return (0.2126 * red) + (0.7152 * green) + (0.0722 * blue);
    }

    /// <summary>Contrast ratio of two opaque colours, 1 (the same) to 21 (black and white), in either order.</summary>
    public static double Contrast(Colour one, Colour other)
    {
        var (a, b) = (Of(one), Of(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>The colour in linear light, each part 0 to 1.</summary>
    internal static (double Red, double Green, double Blue) Linear(Colour colour) => (Linear(colour.Red), Linear(colour.Green), Linear(colour.Blue));

    private static double Linear(byte part)
    {
        var value = part / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
