using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

/// <summary>
/// Cases worked out by an independent integrator.
/// Source: path-cases.json, SciPy's DOP853 at rtol 2e-13, atol 1e-14, steps of at most 1 ms, 12 digits kept.
/// </summary>
internal static class PathCases
{
    public static JsonElement Root { get; } =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "path-cases.json"))).RootElement;

    public static IReadOnlyList<string> Names { get; } = [.. Root.GetProperty("cases").EnumerateArray().Select(one => one.GetProperty("name").GetString()!)];

    public static JsonElement Case(string name) => Root.GetProperty("cases").EnumerateArray().Single(one => one.GetProperty("name").GetString() == name);

    public static LaneSurface Lane(string name, double? stepMetres = null)
    {
        var text = Root.GetProperty("lanes").GetProperty(name).GetRawText();
        var read = LaneSurfaceReader.Read(name, System.Text.Encoding.UTF8.GetBytes(text), stepMetres);
        Assert.Empty(read.Problems);
        return read.Value!.Surface;
    }

    public static Release ReleaseOf(JsonElement one)
    {
        var release = one.GetProperty("release");
        return new Release(
            release.GetProperty("hand").GetString() == "R" ? Hand.Right : Hand.Left,
            Number(release, "board"),
            Number(release, "launch_deg"),
            Number(release, "speed"),
            Number(release, "rpm"))
        {
            AxisRotationDegrees = Number(release, "rot_deg"),
            AxisTiltDegrees = Number(release, "tilt_deg"),
            LaydownFeet = Number(release, "x0") / 0.3048,
        };
    }

    public static Ball BallOf(JsonElement one)
    {
        var ball = one.GetProperty("ball");
        return new Ball { MassKilograms = Number(ball, "m"), RadiusMetres = Number(ball, "R"), RadiusOfGyrationMetres = Number(ball, "k") };
    }

    /// <summary>A number, or not a number where the case says null.</summary>
    public static double Number(JsonElement element, string name) =>
        element.GetProperty(name) is { ValueKind: JsonValueKind.Number } value ? value.GetDouble() : double.NaN;
}
