using System.Runtime.CompilerServices;
using AimTrainer.Calibration;
using AimTrainer.Domain;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Display.Tests;

/// <summary>
/// The pictures of docs/displays.md, drawn by the renderer: every state. After a wanted change: run these tests once with
/// AIMTRAINER_WRITE_SHEETS=1 (that run still fails where it differs: it compares with the old files), and look at the pictures.
/// </summary>
public sealed class SheetsTests
{
    private const int MostBytes = 500_000;

    /// <summary>Drivers round differently; a change of a scene changes more than this.</summary>
    private const double MostDifferent = 0.0002;

    private static readonly PictureSize Wide = new(448, 252), Square = new(336, 252), Lane = new(448, 252);

    /// <summary>A projector that hangs a little to the right of the lane.</summary>
    private static readonly ProjectorMap Keystoned = OpenGlSamples.Map(0, 60, (1560, 1060), (360, 1020), (1130, 30), (800, 20));

    [Fact]
    public void Overhead_EveryState_IsAsInTheDocs()
    {
        using var surface = OpenGlSurface.Open(Wide);
        using var frames = new OffscreenFrames(surface);
        var sheet = new SheetsPicture(5, Wide);
        foreach (var state in SceneStates.All())
        {
            sheet.Add(state.Name, frames.Draw(OverheadScene.Build(state.Overhead)), frames);
        }

        foreach (var theme in ThemeLibrary.Own.AsEnumerable().Skip(1))
        {
            foreach (var name in new[] { "ten-shots", "line-missed" })
            {
                var state = SceneStates.All().Single(each => each.Name == name);
                sheet.Add($"{name}, theme {theme.Id}", frames.Draw(OverheadScene.Build(state.Overhead with { Theme = theme })), frames);
            }
        }

        Check("overhead-16-9.png", sheet);
    }

    [Fact]
    public void Overhead_EveryStateOnAnOldScreen_IsAsInTheDocs()
    {
        using var surface = OpenGlSurface.Open(Square);
        using var frames = new OffscreenFrames(surface);
        var sheet = new SheetsPicture(7, Square);
        foreach (var state in SceneStates.All())
        {
            sheet.Add(state.Name, frames.Draw(OverheadScene.Build(state.Overhead with { Aspect = 4.0 / 3 })), frames);
        }

        Check("overhead-4-3.png", sheet);
    }

    [Fact]
    public void Projector_EveryState_IsAsInTheDocsAndMostlyDark()
    {
        using var surface = OpenGlSurface.Open(Lane);
        using var frames = new OffscreenFrames(surface);
        var seen = AsTheBowlerSees(BowlerView.Default);
        var sheet = new SheetsPicture(6, Lane);
        foreach (var state in SceneStates.All())
        {
            Draw(state.Name, ProjectorScene.Build(state.Projector));
        }

        foreach (var theme in ThemeLibrary.Own.AsEnumerable().Skip(1))
        {
            var state = SceneStates.All().Single(each => each.Name == "line-missed");
            Draw($"line-missed, theme {theme.Id}", ProjectorScene.Build(state.Projector with { Theme = theme }));
        }

        var notice = frames.Draw(NoticeScene.Uncalibrated(16.0 / 9, ThemeLibrary.Default));
        AssertDark("uncalibrated", notice);
        sheet.Add("uncalibrated: as projected", notice, frames);
        Check("projector.png", sheet);

        void Draw(string name, Scene<LanePoint> scene)
        {
            var projected = frames.Draw(scene, Keystoned);
            AssertDark(name, projected);
            sheet.Add($"{name}: as projected", projected, frames);
            sheet.Add($"{name}: as the bowler sees it", frames.Draw(WithWood(scene), seen), frames);
        }
    }

    /// <summary>The lane's own wood, very dim, and where it ends: so that one sees where the light falls.</summary>
    private static Scene<LanePoint> WithWood(Scene<LanePoint> scene) => scene with
    {
        Shapes = [
            OpenGlSamples.Fill(new(30, 27, 24), OpenGlSamples.At(0, 0), OpenGlSamples.At(41.5, 0), OpenGlSamples.At(41.5, 60), OpenGlSamples.At(0, 60)),
            .. scene.Shapes],
    };

    /// <summary>The lane in perspective, from the eye that targets are made for: the foul line near the lower edge, the pins near the upper.</summary>
    private static ProjectorMap AsTheBowlerSees(BowlerView view)
    {
        const double Middle = 960, Bottom = 1065, Top = 15;
        double Below(double feet) => view.EyeHeight.Value / (view.Behind.Value + feet);
        var scale = (Bottom - Top) / (Below(0) - Below(60));
        (double X, double Y) Pixel(double acrossInches, double feet) =>
            (Middle - (scale * (acrossInches - 20.75) / 12 / (view.Behind.Value + feet)), Top + (scale * (Below(feet) - Below(60))));
        return OpenGlSamples.Map(0, 60, Pixel(0, 0), Pixel(41.5, 0), Pixel(0, 60), Pixel(41.5, 60));
    }

    /// <summary>Not more light than a twentieth of all white, as the scenes promise for the lane.</summary>
    private static void AssertDark(string name, Image<Rgba32> picture)
    {
        var share = new OpenGlLight(picture).Weigh().Area / (picture.Width * picture.Height);
        Assert.True(share <= SceneLight.MostOnLane, FormattableString.Invariant($"{name}: {share:0.000} of all white"));
    }

    private static void Check(string file, SheetsPicture made)
    {
        using var sheet = made.Whole();
        if (Environment.GetEnvironmentVariable("AIMTRAINER_WRITE_SHEETS") is { Length: > 0 })
        {
            File.WriteAllBytes(Path.Combine(FolderOfTests(), "..", "..", "docs", "pictures", "displays", file), SheetsPicture.Png(sheet));
        }

        Assert.Contains($"(pictures/displays/{file})", File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "displays.md")), StringComparison.Ordinal);
        var path = Path.Combine(AppContext.BaseDirectory, "docs", "pictures", "displays", file);
        Assert.InRange(new FileInfo(path).Length, 1, MostBytes);
        using var kept = Image.Load<Rgba32>(path);
        Assert.Equal((sheet.Width, sheet.Height), (kept.Width, kept.Height));
        Assert.InRange(Different(sheet, kept), 0, MostDifferent);
    }

    /// <summary>The share of pixels that differ by more than a palette of 256 colours explains.</summary>
    private static double Different(Image<Rgba32> one, Image<Rgba32> other)
    {
        const int Palette = 40;
        var (mine, theirs) = (new Rgba32[one.Width * one.Height], new Rgba32[one.Width * one.Height]);
        one.CopyPixelDataTo(mine);
        other.CopyPixelDataTo(theirs);
        var count = 0;
        for (var i = 0; i < mine.Length; i++)
        {
            var (a, b) = (mine[i], theirs[i]);
            count += a != b && Math.Max(Math.Abs(a.R - b.R), Math.Max(Math.Abs(a.G - b.G), Math.Abs(a.B - b.B))) > Palette ? 1 : 0;
        }

        return count / (double)mine.Length;
    }

    private static string FolderOfTests([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
