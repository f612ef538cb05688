namespace AimTrainer.Display;

/// <summary>One letter, measured in capital heights.</summary>
/// <param name="Advance">How far the next letter lies to the right.</param>
/// <param name="Contours">Its closed outlines; none for a space.</param>
internal sealed record Glyph(double Advance, IReadOnlyList<GlyphPiece[]> Contours);
