using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>Picture heights to pixels.</summary>
internal sealed class ScreenProjection(PictureSize size) : IProjection
{
    private readonly Viewport _viewport = new(size);
    private readonly List<XY> _pixels = [];

    /// <inheritdoc/>
    public XY Flat(XY point) => point * size.Height;

    /// <inheritdoc/>
    public void Outline(List<XY> contour, CoverageBuilder builder)
    {
        _pixels.Clear();
        foreach (var point in contour)
        {
            _pixels.Add(Flat(point));
        }

        _viewport.Outline(_pixels, builder);
    }
}
