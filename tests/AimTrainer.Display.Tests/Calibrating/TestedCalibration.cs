using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>A calibration with a projector that is known, in a folder of its own.</summary>
internal sealed class TestedCalibration : IDisposable
{
    public static readonly PictureSize Picture = new(1920, 1080);

    public static readonly MonitorMode Monitor = new("screen", Picture, 60);

    /// <summary>Where the projector of this test really puts the lane.</summary>
    private static readonly ProjectorMap Thrown = OpenGlSamples.Map(0, 60, (1310, 1000), (610, 1000), (1052, 141), (870, 140));

    private readonly PictureSize _picture;

    public TestedCalibration(PictureSize? picture = null, string folder = "")
    {
        _picture = picture ?? Picture;
        Store = new MapStore(Path.Combine(Folder, folder), TimeProvider.System);
        Desk = new CalibrationDesk(new CalibrationTask(new MapPlace(3, "near"), LaneProfileReader.Default, null), Store, () => Changes++, Said.Add);
    }

    public string Folder { get; } = Directory.CreateTempSubdirectory("aimtrainer-calibration-").FullName;

    public MapStore Store { get; }

    public CalibrationDesk Desk { get; }

    public List<string> Said { get; } = [];

    public int Changes { get; private set; }

    public TestedCalibration Started(MonitorMode? monitor)
    {
        Desk.Placed(_picture, monitor, null);
        return this;
    }

    /// <summary>Moves the crosshair to where the mark gone to lies in the picture, as near as steps go, and sets it.</summary>
    public TestedCalibration SetNext(int count)
    {
        for (var i = 0; i < count; i++)
        {
            var thrown = Thrown.PixelOf(Desk.Now.Placing.Mark.Lane);
            var aim = new ProjectorPixel(thrown.X * _picture.Width / Picture.Width, thrown.Y * _picture.Height / Picture.Height);
            Move(NudgeDirection.Left, NudgeDirection.Right, aim.X, at => at.X);
            Move(NudgeDirection.Up, NudgeDirection.Down, aim.Y, at => at.Y);

            // Nobody places a mark to better than half a pixel.
            Desk.Apply(new PlacingAction.Nudge((NudgeDirection)(i % 4), NudgeStep.Fine));
            Desk.Apply(new PlacingAction.Set());
        }

        return this;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private void Move(NudgeDirection less, NudgeDirection more, double aim, Func<ProjectorPixel, double> of)
    {
        foreach (var (step, pixels) in new[] { (NudgeStep.Coarse, 12.0), (NudgeStep.Fine, 0.5) })
        {
            while (Math.Abs(of(Desk.Now.Placing.Crosshair) - aim) > pixels / 2)
            {
                Desk.Apply(new PlacingAction.Nudge(of(Desk.Now.Placing.Crosshair) > aim ? less : more, step));
            }
        }
    }
}
