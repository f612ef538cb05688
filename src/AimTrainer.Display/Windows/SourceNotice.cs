using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Says on a picture that its source is away, so that nobody takes the last picture for the present one.</summary>
internal static class SourceNotice
{
    private const double BarHeight = 0.2, LettersHigh = 0.05, Pitch = 0.085;

    /// <summary>A bar across the lower edge of a screen. What is wrong stands in full on the console: it is nothing for the bowler.</summary>
    public static Scene<ScreenPoint> On(Scene<ScreenPoint> scene, DisplayNews news, double aspect, Theme theme)
    {
        if (news.Notice is null)
        {
            return scene;
        }

        var left = ScreenInk.Margin;
        var top = 1 - BarHeight;
        var shapes = scene.Shapes.AsEnumerable().ToList();
        shapes.Add(new Shape<ScreenPoint>.Polygon([new(0, top), new(aspect, top), new(aspect, 1), new(0, 1)], theme.Screen.Panel));
        shapes.Add(new Shape<ScreenPoint>.Polygon([new(0, top), new(aspect, top), new(aspect, top + 0.01), new(0, top + 0.01)], theme.Screen.Miss));
        var baseline = top + 0.085;
        foreach (var (line, bold) in new[] { (news.AwaySince is { } since ? $"No news since {Clock(since)}" : "No news of the session", true), ("This may be an old picture; ask your coach.", false) })
        {
            shapes.Add(new Shape<ScreenPoint>.Writing(line, new ScreenPoint(left, baseline), LettersHigh, TextAlign.Left, theme.Screen.Text, bold));
            baseline += Pitch;
        }

        return scene with { Shapes = shapes.ToValueList() };
    }

    /// <summary>Two words across the lane, near the bowler. What is wrong in full stands on the console: light on a lane is no place for it.</summary>
    public static Scene<LanePoint> On(Scene<LanePoint> scene, DisplayNews news, LaneProfile lane, Theme theme)
    {
        const double LettersInches = 3, Stretch = 9, DownFeet = 4, SinceInches = 2, SinceFeet = 1.5;
        if (news.Notice is null)
        {
            return scene;
        }

        var middle = new LanePoint(Inches.FromInches(lane.Width.Value / 2), Feet.FromFeet(DownFeet));
        var words = new Shape<LanePoint>.Writing("no news", middle, LettersInches, TextAlign.Middle, theme.Lane.Miss, Bold: true, Stretch);
        var shapes = scene.Shapes.AsEnumerable().Append(words).ToList();
        if (news.AwaySince is { } since)
        {
            var below = new LanePoint(middle.Across, Feet.FromFeet(SinceFeet));
            shapes.Add(new Shape<LanePoint>.Writing($"since {Clock(since)}", below, SinceInches, TextAlign.Middle, theme.Lane.Miss, Bold: true, Stretch));
        }

        return scene with { Shapes = shapes.ToValueList() };
    }

    private static string Clock(DateTimeOffset time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
