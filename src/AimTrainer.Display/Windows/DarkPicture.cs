using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Why a display is dark, and what it says of it.</summary>
/// <param name="Title">A heading; null for a picture that is black to its last pixel.</param>
/// <param name="Lines">What stands below it.</param>
public sealed record DarkPicture(string? Title, ValueList<string> Lines)
{
    /// <summary>Projection is stopped. On the lane there is no light at all; a screen says so, because whoever looks at it would wonder.</summary>
    /// <param name="onLane">Whether the display lights the lane.</param>
    public static DarkPicture Stopped(bool onLane) => onLane
        ? new DarkPicture(null, [])
        : new DarkPicture("Stopped", ["Projection is stopped at every lane.", "Wait until your coach goes on.", "Stay behind the foul line."]);

    /// <summary>The scene of it, for a picture of a size.</summary>
    /// <param name="aspect">The picture's width by its height.</param>
    /// <param name="theme">The colours.</param>
    public Scene<ScreenPoint> SceneOf(double aspect, Theme theme)
    {
        var fitting = Math.Clamp(aspect, 1, 4);
        return Title is null
            ? new Scene<ScreenPoint>(new Colour(0, 0, 0), [])
            : SceneFit.Into(NoticeScene.Build(fitting, theme, Title, [.. Lines.AsEnumerable()]), fitting, aspect);
    }
}
