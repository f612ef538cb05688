using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>What the GPU needs to dim a projector's picture along its overlaps.</summary>
/// <param name="Map">The projector's map.</param>
/// <param name="Scale">Pixels of the map in a pixel of the framebuffer.</param>
internal sealed record Dimming(ProjectorMap Map, XY Scale)
{
    /// <summary>Whether a map shares any of its lane with another projector.</summary>
    public static bool IsNeededFor(ProjectorMap map) => map.Stretch.NearOverlap.Value > 0 || map.Stretch.FarOverlap.Value > 0;

    /// <summary>Sets the uniforms of a program that is in use.</summary>
    public void Set(Silk.NET.OpenGL.GL gl, ShaderProgram program)
    {
        var back = MapCheck.Inverse(MapCheck.FacingLane(Map).Map);

        // Scaled so that a float holds it well: only ratios matter.
        var unit = 1 / Math.Max(Math.Abs(back.M33), Math.Max(Math.Abs(back.M31), Math.Abs(back.M32)) * Map.Picture.Width);
        Span<float> columns =
        [
            (float)(back.M11 * unit), (float)(back.M21 * unit), (float)(back.M31 * unit),
            (float)(back.M12 * unit), (float)(back.M22 * unit), (float)(back.M32 * unit),
            (float)(back.M13 * unit), (float)(back.M23 * unit), (float)(back.M33 * unit),
        ];
        gl.UniformMatrix3(program.Place("uBack"), false, columns);
        var (x, y) = (Map.Picture.Width / 2.0f, Map.Picture.Height / 2.0f);
        gl.Uniform3(program.Place("uLens"), x, y, MathF.Sqrt((x * x) + (y * y)));
        gl.Uniform2(program.Place("uTerms"), (float)Map.Distortion.K1, (float)Map.Distortion.K2);
        gl.Uniform2(program.Place("uScale"), (float)Scale.X, (float)Scale.Y);
        var stretch = Map.Stretch;
        gl.Uniform4(
            program.Place("uStretch"), (float)(stretch.From.Value * 12), (float)(stretch.To.Value * 12),
            (float)(stretch.NearOverlap.Value * 12), (float)(stretch.FarOverlap.Value * 12));
    }
}
