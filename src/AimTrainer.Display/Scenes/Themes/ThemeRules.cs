using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What the colours of a theme must keep, so that everybody can read it.</summary>
public static class ThemeRules
{
    /// <summary>Least contrast ratio of words. Source: WCAG 2.1, success criterion 1.4.3 (AA).</summary>
    public const double LeastForText = 4.5;

    /// <summary>Least contrast ratio of marks. Source: WCAG 2.1, success criterion 1.4.11 (AA).</summary>
    public const double LeastForMarks = 3;

    /// <summary>
    /// Least CIE 1976 difference of two marks that mean different things, for every vision: many times what can just be seen side by
    /// side, because these are seen one after the other, small and from afar. A choice of ours; shapes differ as well.
    /// </summary>
    public const double LeastDifference = 15;

    /// <summary>Every pair of colours that is too alike, in the order of the theme's file.</summary>
    public static ValueList<ThemeFault> FaultsOf(Theme theme)
    {
        var faults = new List<ThemeFault>();
        var (lane, screen) = (theme.Lane, theme.Screen);
        var onLane = new (string Name, Colour Colour)[]
        {
            ("target", lane.Target), ("rim", lane.Rim), ("next", lane.Next), ("path", lane.Path), ("hit", lane.Hit), ("miss", lane.Miss), ("trail", lane.Trail),
        };
        foreach (var (name, colour) in onLane)
        {
            Contrast(faults, "lane", name, colour, "black", LanePalette.Ground, LeastForMarks);
        }

        Contrast(faults, "lane", "text", lane.Text, "black", LanePalette.Ground, LeastForText);
        Contrast(faults, "lane", "rim", lane.Rim, "target", lane.Target, 1.5);
        Difference(faults, "lane", [("rim", lane.Rim), ("hit", lane.Hit), ("miss", lane.Miss), ("next", lane.Next)]);

        foreach (var (name, colour) in new[] { ("text", screen.Text), ("quiet", screen.Quiet) })
        {
            Contrast(faults, "screen", name, colour, "ground", screen.Ground, LeastForText);
            Contrast(faults, "screen", name, colour, "panel", screen.Panel, LeastForText);
        }

        var onScreen = new[]
        {
            ("mark", screen.Mark), ("target", screen.Target), ("next", screen.Next), ("hit", screen.Hit), ("miss", screen.Miss), ("trail", screen.Trail),
        };
        foreach (var (name, colour) in onScreen)
        {
            Contrast(faults, "screen", name, colour, "lane", screen.Lane, LeastForMarks);
            Contrast(faults, "screen", name, colour, "panel", screen.Panel, LeastForMarks);
        }

        // The balls of a comparison are told apart by these; by shape and line as well.
        Difference(faults, "lane", [("next", lane.Next), ("trail", lane.Trail)]);
        Difference(faults, "screen", [("next", screen.Next), ("trail", screen.Trail)]);
        Difference(faults, "screen", [("target", screen.Target), ("hit", screen.Hit), ("miss", screen.Miss), ("next", screen.Next)]);
        return faults.ToValueList();
    }

    private static void Contrast(List<ThemeFault> faults, string palette, string name, Colour colour, string groundName, Colour ground, double least)
    {
        var contrast = Luminance.Contrast(colour, ground);
        if (contrast < least)
        {
            faults.Add(new ThemeFault(
                palette, name,
                FormattableString.Invariant($"a contrast of {contrast:0.00} with {groundName}"),
                FormattableString.Invariant($"{least} or more: make one of them lighter or darker")));
        }
    }

    private static void Difference(List<ThemeFault> faults, string palette, (string Name, Colour Colour)[] marks)
    {
        for (var i = 0; i < marks.Length; i++)
        {
            for (var j = i + 1; j < marks.Length; j++)
            {
                foreach (var vision in Enum.GetValues<Vision>())
                {
                    var difference = SeenColour.Of(marks[i].Colour, vision).DifferenceTo(SeenColour.Of(marks[j].Colour, vision));
                    if (difference < LeastDifference)
                    {
                        faults.Add(new ThemeFault(
                            palette, marks[j].Name,
                            FormattableString.Invariant($"a colour {difference:0.0} from {marks[i].Name} for somebody with {Words(vision)}"),
                            FormattableString.Invariant($"{LeastDifference} or more: make one of them lighter or darker")));
                    }
                }
            }
        }
    }

    private static string Words(Vision vision) => vision switch
    {
        Vision.WithoutLong => "no long-wave (red) cones",
        Vision.WithoutMiddle => "no middle-wave (green) cones",
        Vision.WithoutShort => "no short-wave (blue) cones",
        _ => "usual sight",
    };
}
