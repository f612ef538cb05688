namespace AimTrainer.Display;

/// <summary>A colour as somebody sees it: CIE 1976 L*a*b* under D65.</summary>
/// <param name="Lightness">L*, 0 black to 100 white.</param>
/// <param name="GreenRed">a*, negative toward green, positive toward red.</param>
/// <param name="BlueYellow">b*, negative toward blue, positive toward yellow.</param>
public readonly record struct SeenColour(double Lightness, double GreenRed, double BlueYellow)
{
    /// <summary>
    /// An opaque colour seen with some vision. The dichromats' matrices, for linear sRGB, are those of Machado, Oliveira and
    /// Fernandes 2009, "A physiologically-based model for simulation of color vision deficiency", IEEE Transactions on Visualization
    /// and Computer Graphics 15(6), table of matrices, severity 1.0; what leaves the gamut is cut off.
    /// </summary>
    public static SeenColour Of(Colour colour, Vision vision)
    {
        var (red, green, blue) = Luminance.Linear(colour);
        (red, green, blue) = vision switch
        {
            Vision.WithoutLong => (
                (0.152286 * red) + (1.052583 * green) - (0.204868 * blue),
                (0.114503 * red) + (0.786281 * green) + (0.099216 * blue),
                (-0.003882 * red) - (0.048116 * green) + (1.051998 * blue)),
            Vision.WithoutMiddle => (
                (0.367322 * red) + (0.860646 * green) - (0.227968 * blue),
                (0.280085 * red) + (0.672501 * green) + (0.047413 * blue),
                (-0.011820 * red) + (0.042940 * green) + (0.968881 * blue)),
            Vision.WithoutShort => (
                (1.255528 * red) - (0.076749 * green) - (0.178779 * blue),
                (-0.078411 * red) + (0.930809 * green) + (0.147602 * blue),
                (0.004733 * red) + (0.691367 * green) + (0.303900 * blue)),
            _ => (red, green, blue),
        };
        return FromLinear(Math.Clamp(red, 0, 1), Math.Clamp(green, 0, 1), Math.Clamp(blue, 0, 1));
    }

    /// <summary>CIE 1976 colour difference: 0 is the same, about 2 just noticeable side by side, 100 black and white.</summary>
    public double DifferenceTo(SeenColour other)
    {
        var (l, a, b) = (Lightness - other.Lightness, GreenRed - other.GreenRed, BlueYellow - other.BlueYellow);
        return Math.Sqrt((l * l) + (a * a) + (b * b));
    }

    // Primaries of IEC 61966-2-1 (sRGB); L*a*b* of CIE 15.
    private static SeenColour FromLinear(double red, double green, double blue)
    {
        var x = Cube(((0.4124564 * red) + (0.3575761 * green) + (0.1804375 * blue)) / 0.95047);
        var y = Cube((0.2126729 * red) + (0.7151522 * green) + (0.0721750 * blue));
        var z = Cube(((0.0193339 * red) + (0.1191920 * green) + (0.9503041 * blue)) / 1.08883);
        return new SeenColour((116 * y) - 16, 500 * (x - y), 200 * (y - z));
    }

    private static double Cube(double share) => share > 216.0 / 24389 ? Math.Cbrt(share) : ((24389.0 / 27 * share) + 16) / 116;
}
