using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>What the GPU needs to dim a projector's picture along its overlaps.</summary>
/// <param name="map">The projector's map.</param>
/// <param name="scale">Pixels of the map in a pixel of the framebuffer.</param>
internal sealed class Dimming(ProjectorMap map, XY scale)
{
    private readonly Homography _back = MapCheck.Inverse(MapCheck.FacingLane(map).Map);
    private readonly Lens _lens = new(map);

    /// <summary>Whether any pixel of a rectangle of the framebuffer may be dimmed.</summary>
    public bool Touches(int x, int y, int width, int height)
    {
        // Without a lens the distance is greatest and least at corners; a lens bends the sides, for which some feet are to spare.
        const double Spare = 2 * 12;
        var stretch = map.Stretch;
        var from = ((stretch.From.Value + stretch.NearOverlap.Value) * 12) + (_lens.Bends ? Spare : 0);
        var to = ((stretch.To.Value - stretch.FarOverlap.Value) * 12) - (_lens.Bends ? Spare : 0);
        return !IsBetween(x, y) || !IsBetween(x + width, y) || !IsBetween(x, y + height) || !IsBetween(x + width, y + height);

        bool IsBetween(int column, int row)
        {
            var pixel = _lens.Straighten(new XY(column * scale.X, row * scale.Y));
            var w = (_back.M31 * pixel.X) + (_back.M32 * pixel.Y) + _back.M33;
            var down = ((_back.M21 * pixel.X) + (_back.M22 * pixel.Y) + _back.M23) / w;
            return w > 0 && down >= from && down <= to;
        }
    }

    /// <summary>Whether a map shares any of its lane with another projector.</summary>
    public static bool IsNeededFor(ProjectorMap map) => map.Stretch.NearOverlap.Value > 0 || map.Stretch.FarOverlap.Value > 0;

    /// <summary>Sets the uniforms of a program that is in use.</summary>
    public void Set(Silk.NET.OpenGL.GL gl, ShaderProgram program)
    {
        var back = _back;

        // Scaled so that a float holds it well: only ratios matter.
        var unit = 1 / Math.Max(Math.Abs(back.M33), Math.Max(Math.Abs(back.M31), Math.Abs(back.M32)) * map.Picture.Width);
        Span<float> columns =
        [
            (float)(back.M11 * unit), (float)(back.M21 * unit), (float)(back.M31 * unit),
            (float)(back.M12 * unit), (float)(back.M22 * unit), (float)(back.M32 * unit),
            (float)(back.M13 * unit), (float)(back.M23 * unit), (float)(back.M33 * unit),
        ];
        gl.UniformMatrix3(program.Place("uBack"), false, columns);
        var (x, y) = (map.Picture.Width / 2.0f, map.Picture.Height / 2.0f);
        gl.Uniform3(program.Place("uLens"), x, y, MathF.Sqrt((x * x) + (y * y)));
        gl.Uniform2(program.Place("uTerms"), (float)map.Distortion.K1, (float)map.Distortion.K2);
        gl.Uniform2(program.Place("uScale"), (float)scale.X, (float)scale.Y);
        var stretch = map.Stretch;
        gl.Uniform4(
            program.Place("uStretch"), (float)(stretch.From.Value * 12), (float)(stretch.To.Value * 12),
            (float)(stretch.NearOverlap.Value * 12), (float)(stretch.FarOverlap.Value * 12));
    }
}
