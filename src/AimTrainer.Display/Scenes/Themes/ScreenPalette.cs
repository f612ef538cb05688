namespace AimTrainer.Display;

/// <summary>The colours of a screen.</summary>
/// <param name="Ground">Behind everything.</param>
/// <param name="Panel">Behind the figures of a group.</param>
/// <param name="Text">Main figures and words.</param>
/// <param name="Quiet">Words of less weight.</param>
/// <param name="Lane">The lane's wood.</param>
/// <param name="Boards">Lines between boards; decoration.</param>
/// <param name="Mark">Arrows, dots, foul line.</param>
/// <param name="Target">The target.</param>
/// <param name="Next">The target that comes next.</param>
/// <param name="Hit">A hit.</param>
/// <param name="Miss">A miss.</param>
/// <param name="Trail">The way the ball took, and a shot nobody measured.</param>
public sealed record ScreenPalette(
    Colour Ground, Colour Panel, Colour Text, Colour Quiet, Colour Lane, Colour Boards, Colour Mark, Colour Target, Colour Next, Colour Hit, Colour Miss, Colour Trail);
