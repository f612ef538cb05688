using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Output;
using AimTrainer.Sessions;
using SixLabors.ImageSharp;

namespace AimTrainer.Setup;

/// <summary>Draws what displays show into picture files, without any screen. All of it on one thread.</summary>
internal sealed class DisplayPictures : IDisposable
{
    private readonly EglSurface _surface;
    private readonly OffscreenFrames _frames;
    private readonly Theme _theme;
    private readonly ProjectorMap _map;

    private DisplayPictures(EglSurface surface, Theme theme, ProjectorMap map) =>
        (_surface, _frames, _theme, _map) = (surface, new OffscreenFrames(surface), theme, map);

    /// <summary>Opens a picture to draw into.</summary>
    /// <param name="size">Its size.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="map">The projector's map; null for <see cref="DisplayMaps.Straight"/>.</param>
    /// <returns>The pictures, or why there can be none and what to do, in one line.</returns>
    public static (DisplayPictures? Pictures, string? Problem) Open(PictureSize size, Theme theme, ProjectorMap? map)
    {
        var opened = EglSurface.Open(size);
        return opened.Worked ? (new DisplayPictures(opened.Surface, theme, map ?? DisplayMaps.Straight(size)), null) : (null, opened.Problem);
    }

    /// <summary>Draws a moment of a session.</summary>
    /// <param name="file">The file to write, a PNG.</param>
    /// <param name="kind">Which display.</param>
    /// <param name="snapshot">The moment.</param>
    /// <param name="sinceShot">Time since the last shot; null when its result is no longer shown.</param>
    /// <exception cref="UserException">The file cannot be written.</exception>
    public void Write(string file, DisplayKind kind, SessionSnapshot snapshot, TimeSpan? sinceShot)
    {
        var news = new DisplayNews(snapshot, null);
        var cleared = sinceShot is null;
        using var image = kind == DisplayKind.Overhead ? _frames.Draw(OverheadContent.SceneOf(news, _surface.Size, sinceShot, cleared, _theme))
            : MapCheck.ProblemOf(_map) is { } problem ? _frames.Draw(ProjectorContent.NoMapScene(_surface.Size, _theme, problem))
            : _frames.Draw(ProjectorContent.SceneOf(news, sinceShot, cleared, _theme), _map);
        using var bytes = new MemoryStream();
        image.SaveAsPng(bytes);
        UserFiles.WriteAllBytes(file, bytes.ToArray());
    }

    public void Dispose()
    {
        _frames.Dispose();
        _surface.Dispose();
    }
}
