using AimTrainer.Calibration;

namespace AimTrainer.Display.Tests;

/// <summary>
/// What is drawn through EGL lies where the map says. Asked for are 0.15 pixels and 1 % of area; the renderer is exact by its making, so it is
/// held to a third and a fifth of that.
/// </summary>
public sealed class OpenGlAccuracyTests
{
    private const double Pixels = 0.05;
    private const double Share = 0.002;

    public static TheoryData<string> Maps() => new(OpenGlSamples.Maps.Keys);

    [Theory]
    [MemberData(nameof(Maps))]
    public void Draw_TargetOfOneAndOfFiveBoards_LiesWhereTheMapSays(string name)
    {
        var map = OpenGlSamples.Maps[name];
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        foreach (var boards in new[] { 1, 5 })
        {
            foreach (var feet in Distances(map))
            {
                var target = OpenGlSamples.Target(17, boards, feet, 4);
                using var image = frames.Draw(new(new(0, 0, 0), [OpenGlSamples.Fill(new(255, 255, 255), target)]), map);
                Compare(new OpenGlOutline(map, target), new OpenGlLight(image), $"{boards} boards at {feet} ft");
            }
        }
    }

    private static void Compare(OpenGlOutline exact, OpenGlLight drawn, string what)
    {
        var (left, top, right, bottom) = exact.Bounds;
        Assert.True(left > 1 && top > 1 && right < drawn.Width - 1 && bottom < drawn.Height - 1, $"{what} is not in the picture: the test measures nothing");

        var (area, x, y) = exact.Weigh();
        var (drawnArea, drawnX, drawnY) = drawn.Weigh();
        Assert.InRange(drawnX - x, -Pixels, Pixels);
        Assert.InRange(drawnY - y, -Pixels, Pixels);
        Assert.InRange(drawnArea / area, 1 - Share, 1 + Share);

        var measured = Edges(exact, drawn, alongRow: true, (int)top, (int)bottom, what) + Edges(exact, drawn, alongRow: false, (int)left, (int)right, what);
        Assert.InRange(measured, 4, int.MaxValue);
    }

    private static int Edges(OpenGlOutline exact, OpenGlLight drawn, bool alongRow, int first, int last, string what)
    {
        var measured = 0;
        for (var line = first; line <= last; line++)
        {
            // Both edges are measured from a pixel between them that is wholly lit.
            if (exact.Crossings(alongRow, line) is { } crossings && crossings.To - crossings.From >= 4)
            {
                var (from, to) = drawn.Edges(alongRow, line, (crossings.From + crossings.To) / 2);
                Assert.True(
                    Math.Abs(from - crossings.From) <= Pixels && Math.Abs(to - crossings.To) <= Pixels,
                    $"{what}, {(alongRow ? "row" : "column")} {line}: drawn from {from:0.000} to {to:0.000}, should be {crossings.From:0.000} to {crossings.To:0.000}");
                measured += 2;
            }
        }

        return measured;
    }

    /// <summary>A near and a far place that every such map shows.</summary>
    private static double[] Distances(ProjectorMap map) => OpenGlSamples.Maps.First(pair => pair.Value == map).Key switch
    {
        "long throw at the far end" or "barrel lens, long throw, rolled" => [45, 55],
        "near part from the foul line" or "straight down, no perspective" => [5, 15],
        _ => [15, 42],
    };
}
