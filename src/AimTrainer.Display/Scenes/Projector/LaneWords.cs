using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Writes on the lane: each line so tall along it that the bowler sees letters of natural shape.</summary>
internal static class LaneWords
{
    /// <summary>Seen height of a capital: almost seven and four times the smallest letter a usual eye can read (5 minutes of arc).</summary>
    private const double TitleDegrees = 0.56;

    private const double SmallDegrees = 0.34;
    private const double MarginInches = 2, ClearInches = 2.6;
    private const double LineGap = 0.75, ClearOfTarget = 0.4;
    private const double FarthestFeet = 59;
    private const double FirstFeet = 16;

    /// <summary>Lines in the middle of the lane, in the first free stretch from the arrows on, the last one nearest.</summary>
    public static void Block(LaneInk ink, IReadOnlyList<string> lines, bool title)
    {
        for (var far = FirstFeet; far <= FarthestFeet; far++)
        {
            var laid = Laid(ink, lines, far, title);
            var near = laid[^1].Baseline - ((TextRuler.Descent + ClearOfTarget) * laid[^1].Tall);
            if (near > 0 && ink.IsFree(near, far))
            {
                ink.Take(near, far, 0, ink.Lane.Width.Value);
                foreach (var line in laid)
                {
                    Write(ink, line, ink.Lane.Width.Value / 2);
                }

                return;
            }
        }
    }

    /// <summary>Lines in the first stretch from the arrows on, in the middle or to a side, that is free and clear of the balls' ways; else as a block.</summary>
    /// <param name="ink">The lane.</param>
    /// <param name="lines">The lines.</param>
    /// <param name="share">Which share of the lane they may be wide, so that there is a side for them.</param>
    public static void Clear(LaneInk ink, IReadOnlyList<string> lines, double share)
    {
        var width = ink.Lane.Width.Value;
        for (var far = FirstFeet; far <= FarthestFeet; far++)
        {
            var laid = Laid(ink, lines, far, title: false, share);
            var near = laid[^1].Baseline - ((TextRuler.Descent + ClearOfTarget) * laid[^1].Tall);
            var half = laid.Max(line => TextRuler.Width(line.Text, line.Size, line.Bold)) / 2;
            foreach (var across in new[] { width / 2, width - half - MarginInches, half + MarginInches })
            {
                if (near > 0 && ink.IsFree(near, far, across - half, across + half) && ink.IsClearOfWay(near, far, across - half, across + half))
                {
                    ink.Take(near, far, across - half, across + half);
                    laid.ForEach(line => Write(ink, line, across));
                    return;
                }
            }
        }

        Block(ink, lines, title: false);
    }

    /// <summary>
    /// A few words by a target: beside it on the roomier side, clear of where the ball crossed; where that is too narrow between it and
    /// the bowler, else beyond it, there on either side of the ball's way, else nowhere.
    /// </summary>
    public static void By(LaneInk ink, string text, Target target, Board? crossed)
    {
        if (Beside(ink, text, target, crossed))
        {
            return;
        }

        var (near, far) = TargetLength.SpanOf(target, ink.Lane, ink.View);
        foreach (var before in new[] { true, false })
        {
            var line = LineAt(ink, text, before ? near.Value : far.Value + 4, SmallDegrees, true);
            line = line with
            {
                Baseline = before
                    ? near.Value - ((TextRuler.Above(text) + ClearOfTarget) * line.Tall)
                    : far.Value + ((TextRuler.Below(text) + ClearOfTarget) * line.Tall),
            };
            var half = TextRuler.Width(text, line.Size, true) / 2;
            var middle = ink.At(crossed ?? target.Centre, target.Distance).Across.Value;
            if (line.Baseline > 0.5 && line.Baseline + line.Tall < FarthestFeet + 2
                && new[] { middle, middle + half + MarginInches, middle - half - MarginInches }.Any(
                    across => Put(ink, line, Math.Clamp(across, half + 1, ink.Lane.Width.Value - half - 1))))
            {
                return;
            }
        }
    }

    private static bool Beside(LaneInk ink, string text, Target target, Board? crossed)
    {
        double[] places =
        [
            ink.At(target.OutsideEdge, default).Across.Value, ink.At(target.InsideEdge, default).Across.Value,
            ink.At(crossed is { } at ? at : target.Centre, default).Across.Value,
        ];
        var (low, high) = (places.Min() - ClearInches, places.Max() + ClearInches);
        var wanted = WantedInches(ink, target.Distance, SmallDegrees);
        var leftFirst = ink.Lane.Width.Value - high > low;
        foreach (var left in new[] { leftFirst, !leftFirst })
        {
            var room = (left ? ink.Lane.Width.Value - high : low) - 1;
            var size = Math.Min(wanted, room / TextRuler.Width(text, 1, true));
            if (size >= wanted * 0.6)
            {
                var tall = ink.View.LengthSeenAs(Inches.FromInches(size), target.Distance).Value / 12;
                var half = TextRuler.Width(text, size, true) / 2;
                if (Put(ink, new LaneLine(text, target.Distance.Value - (tall / 2), size, tall, true), left ? high + half : low - half))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Writes a line with its middle at a place across, if that piece of the lane is free.</summary>
    private static bool Put(LaneInk ink, LaneLine line, double across)
    {
        var half = TextRuler.Width(line.Text, line.Size, line.Bold) / 2;
        var (from, to) = (line.Baseline - (TextRuler.Below(line.Text) * line.Tall), line.Baseline + (TextRuler.Above(line.Text) * line.Tall));
        if (!ink.IsFree(from, to, across - half, across + half) || !ink.IsClearOfWay(from, to, across - half, across + half))
        {
            return false;
        }

        ink.Take(from, to, across - half, across + half);
        Write(ink, line, across);
        return true;
    }

    private static List<LaneLine> Laid(LaneInk ink, IReadOnlyList<string> lines, double far, bool title, double share = 1)
    {
        // Lines of one weight are of one size, that of the widest; the lane is as wide everywhere.
        var widest = lines.Skip(title ? 1 : 0).Select(line => TextRuler.Width(line, 1, false)).DefaultIfEmpty(1).Max();
        var laid = new List<LaneLine>();
        var top = far;
        for (var i = 0; i < lines.Count; i++)
        {
            var main = title && i == 0;
            var line = main ? LineAt(ink, lines[i], top, TitleDegrees, true) : LineAt(ink, lines[i], top, SmallDegrees, false, share * Room(ink) / widest);
            laid.Add(line);
            top = line.Baseline - ((TextRuler.Descent + (main ? LineGap : LineGap / 3)) * line.Tall);
        }

        return laid;
    }

    /// <summary>A line whose accents reach to <paramref name="top"/>, made smaller when it is too wide for the lane.</summary>
    private static LaneLine LineAt(LaneInk ink, string text, double top, double seenDegrees, bool bold, double mostInches = double.PositiveInfinity)
    {
        var at = Feet.FromFeet(Math.Max(0, top - 1));
        var size = Math.Min(Math.Min(WantedInches(ink, at, seenDegrees), mostInches), Room(ink) / TextRuler.Width(text, 1, bold));
        var tall = ink.View.LengthSeenAs(Inches.FromInches(size), at).Value / 12;
        return new LaneLine(text, top - (TextRuler.Ascent * tall), size, tall, bold);
    }

    private static double Room(LaneInk ink) => ink.Lane.Width.Value - (2 * MarginInches);

    private static double WantedInches(LaneInk ink, Feet at, double seenDegrees)
    {
        var (along, up) = (ink.View.Behind.Value + at.Value, ink.View.EyeHeight.Value);
        return 24 * Math.Tan(seenDegrees * Math.PI / 360) * Math.Sqrt((along * along) + (up * up));
    }

    private static void Write(LaneInk ink, LaneLine line, double across) => ink.Add(new Shape<LanePoint>.Writing(
        line.Text, new LanePoint(Inches.FromInches(across), Feet.FromFeet(line.Baseline)), line.Size, TextAlign.Middle, ink.Palette.Text, line.Bold, line.Tall * 12 / line.Size));

    /// <summary>A line of writing before it is put down; size in inches, baseline and height along the lane in feet.</summary>
    private readonly record struct LaneLine(string Text, double Baseline, double Size, double Tall, bool Bold);
}
