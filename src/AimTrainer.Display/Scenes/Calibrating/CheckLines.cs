using AimTrainer.Calibration;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Draws the lines of a check picture through a map, in widths that are even on the picture.</summary>
internal static class CheckLines
{
    private const double Thin = 0.0016, Usual = 0.0024, Letters = 0.017;

    /// <summary>How far beside the picture a line is still drawn, in picture heights: what is cut off shows no end.</summary>
    private const double Beside = 1;

    public static void Draw(PictureInk ink, ProjectorMap map, LaneProfile lane, LanePalette colours)
    {
        var labels = new List<ScreenPoint>();
        foreach (var line in CheckPicture.Of(lane, map.Stretch))
        {
            var parts = Parts(ink, map, line.Points);
            var (width, colour) = Look(line.Kind, colours);
            foreach (var part in parts)
            {
                ink.Line(width * Math.Max(ink.Scale, 0.5), colour, [.. part]);
            }

            Label(ink, line, parts, labels, colours);
        }
    }

    private static (double Width, Colour Colour) Look(CheckLineKind kind, LanePalette colours) => kind switch
    {
        CheckLineKind.Edge or CheckLineKind.FoulLine => (Usual, colours.Text),
        CheckLineKind.Board or CheckLineKind.Distance => (Thin, colours.Next),
        _ => (Usual, colours.Rim),
    };

    /// <summary>The pieces of a line that lie in the picture or near it.</summary>
    private static List<List<ScreenPoint>> Parts(PictureInk ink, ProjectorMap map, ValueList<LanePoint> points)
    {
        var parts = new List<List<ScreenPoint>>();
        List<ScreenPoint>? part = null;
        foreach (var point in points)
        {
            if (map.TryPixelOf(point) is { } pixel && ink.At(pixel) is var at && at.X >= -Beside && at.X <= ink.Aspect + Beside && at.Y >= -Beside && at.Y <= 1 + Beside)
            {
                if (part is null)
                {
                    parts.Add(part = []);
                }

                part.Add(at);
            }
            else
            {
                part = null;
            }
        }

        return [.. parts.Where(each => each.Count > 1)];
    }

    /// <summary>A board's number at its end near the bowler, a distance beside the lane's right edge; not where it would lie on another.</summary>
    private static void Label(PictureInk ink, CheckLine line, List<List<ScreenPoint>> parts, List<ScreenPoint> labels, LanePalette colours)
    {
        var size = Letters * ink.Scale;
        var ends = parts.SelectMany(part => part).Where(at => at.X >= 0 && at.X <= ink.Aspect && at.Y >= 0 && at.Y <= 1).ToList();
        if (line.Label.Length == 0 || ends.Count == 0)
        {
            return;
        }

        var acrossLane = line.Kind is CheckLineKind.Distance or CheckLineKind.FoulLine;
        var at = acrossLane
            ? new ScreenPoint(Math.Min(ends[0].X + (0.012 * ink.Scale), ink.Aspect - TextRuler.Width(line.Label, size, false) - 0.004), ends[0].Y + (size / 2))
            : new ScreenPoint(ends[0].X, Math.Min(ends[0].Y + (0.03 * ink.Scale), 1 - (size / 2)));
        if (labels.All(other => Math.Abs(other.Y - at.Y) > 1.3 * size || Math.Abs(other.X - at.X) > 2.5 * size))
        {
            labels.Add(at);
            ink.Write(line.Label, at.X, at.Y, size, colours.Trail, align: acrossLane ? TextAlign.Left : TextAlign.Middle);
        }
    }
}
