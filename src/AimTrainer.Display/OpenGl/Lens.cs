using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>The lens of a projector map, as <see cref="ProjectorMap.PixelOf"/> has it.</summary>
internal sealed class Lens
{
    private readonly double _k1;
    private readonly double _k2;

    public Lens(ProjectorMap map)
    {
        (_k1, _k2) = (map.Distortion.K1, map.Distortion.K2);
        Middle = new XY(map.Picture.Width / 2.0, map.Picture.Height / 2.0);
        Unit = Middle.Length;
        Reach = FindReach();
    }

    /// <summary>The middle of the picture.</summary>
    public XY Middle { get; }

    /// <summary>Half the diagonal of the picture, in pixels.</summary>
    public double Unit { get; }

    /// <summary>Whether it bends anything.</summary>
    public bool Bends => _k1 != 0 || _k2 != 0;

    /// <summary>
    /// How far from the middle, in half diagonals and before the lens, lies what reaches the corners; with a little to spare. Null when
    /// the lens folds the picture before that: then some places of the picture have no source and others two.
    /// </summary>
    public double? Reach { get; }

    /// <summary>Where the lens puts a pixel.</summary>
    public XY Bend(XY flat)
    {
        var d = (flat - Middle) * (1 / Unit);
        var r2 = (d.X * d.X) + (d.Y * d.Y);
        return Middle + (d * (Unit * (1 + (_k1 * r2) + (_k2 * r2 * r2))));
    }

    /// <summary>What the lens puts at a pixel; by Newton's method, as the GPU does.</summary>
    public XY Straighten(XY bent)
    {
        var d = (bent - Middle) * (1 / Unit);
        var (goal, r) = (d.Length, d.Length);
        for (var i = 0; i < 5; i++)
        {
            var r2 = r * r;
            r -= ((r * (1 + (r2 * (_k1 + (r2 * _k2))))) - goal) / (1 + (r2 * ((3 * _k1) + (r2 * 5 * _k2))));
        }

        return goal > 0 ? Middle + (d * (Unit * r / goal)) : bent;
    }

    private double? FindReach()
    {
        // The outline is cut by a polygon around the circle of the corners; its own corners lie a little further out.
        const double Spare = 1.03;
        const double Step = 1.0 / 1024;
        double Slope(double r) => 1 + (3 * _k1 * r * r) + (5 * _k2 * r * r * r * r);
        double Moved(double r) => r * (1 + (_k1 * r * r) + (_k2 * r * r * r * r));
        for (var r = 0.0; r <= 4; r += Step)
        {
            if (!(Slope(r) > 0))
            {
                return null;
            }

            if (Moved(r) >= Spare)
            {
                var furthest = r * Spare;
                return Slope(furthest) > 0 ? r : null;
            }
        }

        return null;
    }
}
