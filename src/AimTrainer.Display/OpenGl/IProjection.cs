namespace AimTrainer.Display;

/// <summary>From a plane (lane inches, picture heights) to the pixels of one framebuffer.</summary>
internal interface IProjection
{
    /// <summary>How many pixels a step is, for deciding how finely a curve is cut: the pixel of a point before any lens, not finite where there is none.</summary>
    XY Flat(XY point);

    /// <summary>Gives the builder the edges of a closed contour of the plane: cut to what can be seen, exact to 0.02 pixels.</summary>
    void Outline(List<XY> contour, CoverageBuilder builder);
}
