namespace AimTrainer.Display;

/// <summary>The colours of what a projector draws on the lane. The ground is always black: no light.</summary>
/// <param name="Target">The body of the target.</param>
/// <param name="Rim">Its rim, and the line across where it is graded.</param>
/// <param name="Next">The target that comes next.</param>
/// <param name="Path">The light path between the targets of a line.</param>
/// <param name="Hit">A crossing that held.</param>
/// <param name="Miss">A crossing that did not.</param>
/// <param name="Trail">The way the ball took, and a crossing nobody graded.</param>
/// <param name="Text">Words.</param>
public sealed record LanePalette(Colour Target, Colour Rim, Colour Next, Colour Path, Colour Hit, Colour Miss, Colour Trail, Colour Text)
{
    /// <summary>The ground: no light at all.</summary>
    public static Colour Ground { get; } = new(0, 0, 0);
}
