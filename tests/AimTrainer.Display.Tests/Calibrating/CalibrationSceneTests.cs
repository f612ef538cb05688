using System.Runtime.CompilerServices;
using System.Text;
using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>The picture in which marks are placed. Golden files are renewed as those of the other scenes are (AIMTRAINER_WRITE_GOLDEN=1).</summary>
public sealed class CalibrationSceneTests
{
    public static TheoryData<string> States() => ["start", "four-marks", "seven-marks", "no-map", "mark-left-out", "crosshair-in-a-column", "monitor-away", "given-up", "accepted", "window-4-to-3"];

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_GivesItsGoldenScene(string name)
    {
        using var work = Of(name);
        var text = SceneText.Write(CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default));
        if (Environment.GetEnvironmentVariable("AIMTRAINER_WRITE_GOLDEN") is { Length: > 0 })
        {
            File.WriteAllText(Path.Combine(FolderOfTests(), "Golden", name + ".txt"), text, new UTF8Encoding(false));
        }

        Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Calibrating", "Golden", name + ".txt")).Split('\n'), text.Split('\n'));
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Build_State_SaysTheCautionsAndWritesInsideThePicture(string name)
    {
        using var work = Of(name);
        var picture = work.Desk.Now.Placing.Fitting.Picture;
        var writings = CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default).Shapes.AsEnumerable().OfType<Shape<ScreenPoint>.Writing>().ToList();

        var all = string.Join(' ', writings.Select(writing => writing.Text));
        Assert.All(PlacingCautions.All.AsEnumerable(), caution => Assert.Contains(caution, all, StringComparison.Ordinal));
        Assert.All(writings, writing =>
        {
            var width = TextRuler.Width(writing.Text, writing.Size, writing.Bold);
            var left = writing.Anchor.X - (writing.Align switch { TextAlign.Left => 0, TextAlign.Middle => width / 2, _ => width });
            Assert.InRange(left, -0.02, ((double)picture.Width / picture.Height) - width + 0.02);
            Assert.InRange(writing.Anchor.Y, writing.Size, 1);
        });
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Build_WhilePlacing_EveryKeyIsShown(string name)
    {
        using var work = Of(name);
        var said = CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default).Shapes.AsEnumerable().OfType<Shape<ScreenPoint>.Writing>().Select(writing => writing.Text).ToHashSet();

        Assert.Equal(
            work.Desk.Now.Placing.Phase == PlacingPhase.Accepted ? 0 : PlacingKeys.Help.Count,
            PlacingKeys.Help.Count(help => said.Contains(help.Key) && said.Contains(help.Does)));
    }

    [Fact]
    public void Build_Crosshair_ItsMiddleIsExactlyItsPixel()
    {
        using var work = Of("seven-marks");
        work.Desk.Apply(new PlacingAction.Nudge(NudgeDirection.Left, NudgeStep.Fine));
        var pixel = work.Desk.Now.Placing.Crosshair;
        var dot = CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default).Shapes.AsEnumerable().OfType<Shape<ScreenPoint>.Ellipse>().Last();

        Assert.Equal(pixel.X, dot.Centre.X * TestedCalibration.Picture.Height, 1e-9);
        Assert.Equal(pixel.Y, dot.Centre.Y * TestedCalibration.Picture.Height, 1e-9);
    }

    [Fact]
    public void Build_Preview_ItsArrowsLieWhereTheProjectorPutsThem()
    {
        using var work = Of("seven-marks");
        var map = work.Desk.Now.Placing.Preview!.Fit!.Map;
        var tips = CheckPicture.Of(LaneProfileReader.Default, map.Stretch).AsEnumerable().Where(line => line.Kind == CheckLineKind.Arrow)
            .Select(line => map.PixelOf(line.Points[0])).ToList();
        var strokes = CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default).Shapes.AsEnumerable().OfType<Shape<ScreenPoint>.Stroke>().ToList();

        Assert.Equal(7, tips.Count);
        Assert.All(tips, tip => Assert.Contains(strokes, stroke => Math.Abs((stroke.Points[0].X * 1080) - tip.X) < 1e-9 && Math.Abs((stroke.Points[0].Y * 1080) - tip.Y) < 1e-9));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1080, 1920)]
    [InlineData(5000, 100)]
    [InlineData(7680, 4320)]
    public void Build_OddPictures_IsDrawn(int width, int height)
    {
        using var work = new TestedCalibration(new PictureSize(width, height));
        var scene = CalibrationScene.Build(work.Started(TestedCalibration.Monitor).Desk.Now, ThemeLibrary.Default);

        Assert.NotEmpty(scene.Shapes.AsEnumerable());
    }

    [Fact]
    public void Build_LargeAreas_StayDark()
    {
        using var work = Of("seven-marks");
        using var surface = OpenGlSurface.Open();
        using var frames = new OffscreenFrames(surface);
        using var image = frames.Draw(CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default));
        var lit = 0;
        image.ProcessPixelRows(rows =>
        {
            for (var y = 0; y < rows.Height; y++)
            {
                foreach (var pixel in rows.GetRowSpan(y))
                {
                    lit += pixel.R + pixel.G + pixel.B > 60 ? 1 : 0;
                }
            }
        });

        Assert.InRange(lit / (1920.0 * 1080), 0.005, 0.1);
    }

    internal static TestedCalibration Of(string name)
    {
        var work = new TestedCalibration(name == "window-4-to-3" ? new PictureSize(1024, 768) : null);
        work.Started(name == "window-4-to-3" ? null : TestedCalibration.Monitor);
        switch (name)
        {
            case "four-marks":
                work.SetNext(4);
                break;
            case "seven-marks" or "window-4-to-3":
                work.SetNext(7);
                break;
            case "no-map":
                work.SetNext(4);
                work.Desk.Apply(new PlacingAction.GoTo(1));
                work.Desk.Apply(new PlacingAction.Drop());
                work.Desk.Apply(new PlacingAction.GoTo(2));
                work.Desk.Apply(new PlacingAction.GoTo(1));
                work.Desk.Apply(new PlacingAction.Set());
                break;
            case "mark-left-out":
                work.SetNext(4);
                work.Desk.Apply(new PlacingAction.Skip());
                work.Desk.Apply(new PlacingAction.Turn());
                work.Desk.Apply(new PlacingAction.ChooseDistortion(1));
                break;
            case "crosshair-in-a-column":
                work.SetNext(4);
                for (var step = 0; step < 65; step++)
                {
                    work.Desk.Apply(new PlacingAction.Nudge(NudgeDirection.Left, NudgeStep.Coarse));
                }

                break;
            case "monitor-away":
                work.SetNext(4).Desk.Placed(TestedCalibration.Picture, null, "screen");
                break;
            case "given-up":
                work.SetNext(4).Desk.Apply(new PlacingAction.Abandon());
                break;
            case "accepted":
                work.SetNext(7).Desk.Apply(new PlacingAction.Accept());
                break;
            default:
                break;
        }

        return work;
    }

    private static string FolderOfTests([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
