using SkiaSharp;

namespace AimTrainer.Display.Tests;

/// <summary>Scenes are laid out by a table of widths, pictures are drawn in a font: what is drawn must never be wider than its room.</summary>
public sealed class SheetsWordTests
{
    [Theory]
    [InlineData("Inter-Medium.otf", false)]
    [InlineData("Inter-Bold.otf", true)]
    public void Width_EveryWordOfEveryState_IsNoLessThanSkiasOwn(string face, bool bold)
    {
        using var stream = typeof(Lettering).Assembly.GetManifestResourceStream(face);
        using var data = SKData.Create(stream);
        using var typeface = SKTypeface.FromData(data);
        using var font = new SKFont(typeface, 1000) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
        using var lettering = new Lettering();
        var texts = Texts();
        Assert.InRange(texts.Count, 100, 10_000);
        Assert.All(texts, text =>
        {
            var room = TextRuler.Width(text, 1, bold);
            Assert.InRange(font.MeasureText(text) / font.Metrics.CapHeight, 0, room + 1e-6);
            Assert.InRange(lettering.WidthOf(text, bold), 0, room + 1e-9);
        });
    }

    /// <summary>Every line of every state, its words one by one, and every letter of the table.</summary>
    private static HashSet<string> Texts()
    {
        var lines = SceneStates.All().SelectMany(state => Lines(ProjectorScene.Build(state.Projector))
                .Concat(Lines(OverheadScene.Build(state.Overhead)))
                .Concat(Lines(OverheadScene.Build(state.Overhead with { Aspect = 4.0 / 3 }))))
            .Concat(Lines(NoticeScene.Uncalibrated(16.0 / 9, ThemeLibrary.Default)))
            .ToList();
        return [.. lines, .. lines.SelectMany(line => line.Split(' ')), .. Enumerable.Range(' ', '~' - ' ' + 1).Select(letter => ((char)letter).ToString())];
    }

    private static IEnumerable<string> Lines<TPoint>(Scene<TPoint> scene)
        where TPoint : struct => scene.Shapes.AsEnumerable().OfType<Shape<TPoint>.Writing>().Select(writing => writing.Text);
}
