using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The check picture through a map, with the cautions: somebody behind the foul line sees whether it lies on the lane's own marks.</summary>
public static class CheckScene
{
    private const double Room = 0.42;

    /// <summary>Builds it, in the projector's own picture.</summary>
    /// <param name="map">The map.</param>
    /// <param name="lane">The lane with its marks.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="title">The heading.</param>
    /// <param name="texts">What to say below it, beside what is always said.</param>
    public static Scene<ScreenPoint> Build(ProjectorMap map, LaneProfile lane, Theme theme, string title, IReadOnlyList<string> texts)
    {
        var ink = new PictureInk(map.Picture);
        CheckLines.Draw(ink, map, lane, theme.Lane);
        var s = ink.Scale;
        var left = 0.03 * s;
        var baseline = ink.Words(title, left, 0.06 * s, Room * s, 0.032 * s, theme.Lane.Rim, bold: true, most: 2) + (0.015 * s);
        foreach (var text in (string[])["Do these lines lie on the lane's own edges, arrows and dots? Look from behind the foul line.", .. texts])
        {
            baseline = ink.Words(text, left, baseline, Room * s, 0.022 * s, theme.Lane.Text) + (0.012 * s);
        }

        CautionWords.Write(ink, left, Room * s, theme);
        return ink.Scene();
    }
}
