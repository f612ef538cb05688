namespace AimTrainer.Display;

/// <summary>A piece of a letter's outline in capital heights, y up: a straight line from P0 to P3, or a cubic Bézier curve.</summary>
internal readonly record struct GlyphPiece(XY P0, XY P1, XY P2, XY P3, bool IsLine);
