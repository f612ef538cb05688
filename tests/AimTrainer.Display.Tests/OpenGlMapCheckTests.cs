using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>A map that cannot be drawn by is refused with what is wrong and what to do.</summary>
public sealed class OpenGlMapCheckTests
{
    private static readonly ProjectorMap _good = OpenGlSamples.Maps["straight, from above the bowler"];

    public static TheoryData<string, string> Broken() => new()
    {
        { "not a number", "not a finite number" },
        { "infinite lens", "not a finite number" },
        { "no picture", "0 x 1080" },
        { "folded", "horizon crosses the picture" },
        { "a line", "as a line" },
        { "elsewhere", "no part of the lane" },
        { "empty stretch", "empty" },
        { "folding lens", "fold the picture" },
    };

    public static TheoryData<string> Maps() => new(OpenGlSamples.Maps.Keys);

    [Theory]
    [MemberData(nameof(Broken))]
    public void ProblemOf_BrokenMap_SaysWhatIsWrongAndWhatToDo(string name, string part)
    {
        var problem = MapCheck.ProblemOf(BrokenMap(name));
        Assert.Contains(part, problem, StringComparison.Ordinal);
        Assert.Contains("calibrat", problem, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public void Show_BrokenMap_ThrowsAndKeepsWhatWasShown(string name, string part)
    {
        using var surface = OpenGlSurface.Open(new(192, 108));
        using var painter = new ProjectorPainter();
        painter.Start(surface.Gl);
        painter.Show(OpenGlSamples.Lane(), _good);
        painter.Paint(surface.Size);
        Assert.Contains(part, Assert.Throws<ArgumentException>(() => painter.Show(OpenGlSamples.Lane(), BrokenMap(name))).Message, StringComparison.Ordinal);
        painter.Paint(surface.Size);
        Assert.True(painter.Rectangles > 0);
    }

    [Theory]
    [MemberData(nameof(Maps))]
    public void ProblemOf_MapsOfEveryPlace_IsNone(string name)
    {
        var map = OpenGlSamples.Maps[name];
        Assert.Null(MapCheck.ProblemOf(map));

        // The sign of a homography means nothing.
        var h = map.Homography;
        var other = map with { Homography = new(-h.M11, -h.M12, -h.M13, -h.M21, -h.M22, -h.M23, -h.M31, -h.M32, -h.M33) };
        Assert.Null(MapCheck.ProblemOf(other));
    }

    private static ProjectorMap BrokenMap(string name) => name switch
    {
        "not a number" => _good with { Homography = _good.Homography with { M22 = double.NaN } },
        "infinite lens" => _good with { Distortion = new(double.PositiveInfinity, 0) },
        "no picture" => _good with { Picture = new(0, 1080) },

        // The far corners exchanged: straight lines that cross in the middle of the lane.
        "folded" => OpenGlSamples.Map(0, 60, (1400, 1040), (520, 1040), (840, 60), (1080, 60)),
        "a line" => _good with { Homography = new(1, 1, 100, 1, 1, 100, 0, 0, 1) },
        "elsewhere" => _good with { Homography = new(1, 0, 5000, 0, 1, 0, 0, 0, 1) },
        "empty stretch" => _good with { Stretch = new(Feet.FromFeet(40), Feet.FromFeet(40), Feet.FromFeet(0), Feet.FromFeet(0)) },
        "folding lens" => _good with { Distortion = new(-0.5, 0) },
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };
}
