namespace AimTrainer.Display;

/// <summary>A colour in the two ways that it is drawn.</summary>
/// <param name="Linear">In linear light, to be blended.</param>
/// <param name="Srgb">In sRGB, to be written as it is.</param>
/// <param name="IsOpaque">Whether it hides what lies below.</param>
internal readonly record struct MeshColour(LinearColour Linear, LinearColour Srgb, bool IsOpaque)
{
    /// <summary>From a colour of a shape.</summary>
    public static MeshColour Of(Colour colour) =>
        new(LinearColour.Of(colour), new(colour.Red / 255f, colour.Green / 255f, colour.Blue / 255f, 1), colour.Alpha == byte.MaxValue);
}
