using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>One thing to be drawn.</summary>
/// <typeparam name="TPoint">The plane.</typeparam>
/// <param name="Colour">Its colour.</param>
public abstract record Shape<TPoint>(Colour Colour)
    where TPoint : struct
{
    /// <summary>A filled convex polygon of three or more corners, in either turning sense.</summary>
    public sealed record Polygon(ValueList<TPoint> Corners, Colour Colour) : Shape<TPoint>(Colour);

    /// <summary>A line through two or more points, of an even width, with round ends and corners; closed joins the last to the first.</summary>
    public sealed record Stroke(ValueList<TPoint> Points, double Width, Colour Colour, bool Closed = false) : Shape<TPoint>(Colour);

    /// <summary>A filled ellipse, or with a <see cref="RingWidth"/> above 0 only its rim, that wide inward.</summary>
    /// <param name="Centre">Its middle.</param>
    /// <param name="RadiusAcross">Half its size across the lane, or along X.</param>
    /// <param name="RadiusAlong">Half its size down the lane (inches too), or along Y.</param>
    /// <param name="Colour">Its colour.</param>
    /// <param name="RingWidth">Width of the rim; 0 fills it.</param>
    public sealed record Ellipse(TPoint Centre, double RadiusAcross, double RadiusAlong, Colour Colour, double RingWidth = 0) : Shape<TPoint>(Colour);

    /// <summary>One line of writing. On the lane it stands upright for a bowler who looks downlane.</summary>
    /// <param name="Text">What it says.</param>
    /// <param name="Anchor">The point on the baseline that <see cref="Align"/> speaks of.</param>
    /// <param name="Size">Height of a capital letter.</param>
    /// <param name="Align">Which part of the text is at the anchor.</param>
    /// <param name="Colour">Its colour.</param>
    /// <param name="Bold">Heavier strokes.</param>
    /// <param name="Stretch">How much taller than natural the letters are drawn without growing wider; for writing seen at a flat angle.</param>
    public sealed record Writing(
        string Text, TPoint Anchor, double Size, TextAlign Align, Colour Colour, bool Bold = false, double Stretch = 1) : Shape<TPoint>(Colour);
}
