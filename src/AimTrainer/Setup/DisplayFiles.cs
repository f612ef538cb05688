using System.Globalization;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Setup;

/// <summary>
/// A display without a screen: each frame that a window would have shown becomes a picture file, numbered in their order. All of it
/// on one thread, which it sleeps on between frames.
/// </summary>
internal sealed class DisplayFiles : IDisposable
{
    private static readonly TimeSpan LongestSleep = TimeSpan.FromSeconds(1);

    private readonly AutoResetEvent _wake = new(false);

    public DisplayFiles(int station)
    {
        News = new NewsSlot(new DisplayNews(SessionSnapshot.Idle(station), null), Wake);
        Dark = new Darkness(Wake);
    }

    /// <summary>What is shown.</summary>
    public NewsSlot News { get; }

    /// <summary>Whether it is dark.</summary>
    public Darkness Dark { get; }

    /// <summary>Draws until cancelled.</summary>
    /// <param name="content">What is shown; disposed of at the end.</param>
    /// <param name="size">The size of the pictures.</param>
    /// <param name="folder">The folder for them, which is there.</param>
    /// <param name="written">Told of each picture.</param>
    /// <param name="stop">Ends it.</param>
    /// <exception cref="UserException">It cannot draw, or a file cannot be written.</exception>
    public int Run(IWindowContent content, PictureSize size, string folder, Action<string> written, CancellationToken stop)
    {
        var opened = EglSurface.Open(size);
        using var surface = opened.Surface ?? throw new UserException(opened.Problem!, ExitCodes.Failed);
        using var shown = content;
        using var waking = stop.Register(Wake);
        shown.Placed(new WindowPlace(false, 0, 0, size, null, null));
        shown.Painter.Start(surface.Gl);
        var pixels = new byte[size.Width * size.Height * 4];
        for (var number = 1; !stop.IsCancellationRequested;)
        {
            if (shown.Refresh(size))
            {
                shown.Painter.Paint(size);
                surface.Read(pixels);
                var file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"frame-{number:00000}.png"));
                Write(file, pixels, size);
                written(file);
                number++;
            }

            var sleep = shown.ChangesIn is { } soon && soon < LongestSleep ? soon : LongestSleep;
            _wake.WaitOne(sleep < TimeSpan.Zero ? TimeSpan.Zero : sleep);
        }

        return ExitCodes.Ok;
    }

    public void Dispose() => _wake.Dispose();

    /// <summary>Whoever sees the file sees all of it.</summary>
    private static void Write(string file, byte[] pixels, PictureSize size)
    {
        using var image = Image.LoadPixelData<Rgba32>(pixels, size.Width, size.Height);
        using var bytes = new MemoryStream();
        image.SaveAsPng(bytes);
        UserFiles.WriteAllBytes(file + ".new", bytes.ToArray());
        File.Move(file + ".new", file, overwrite: true);
    }

    private void Wake() => _wake.Set();
}
