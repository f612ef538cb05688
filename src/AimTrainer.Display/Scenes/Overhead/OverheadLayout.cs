using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Where the parts of a screen lie: the lane on the left, three groups of figures on the right, a line of words above and below.</summary>
internal sealed record OverheadLayout(double Aspect)
{
    private const double Top = 0.122, Bottom = 0.905, Gap = 0.012, Group = 0.227;

    public const double Left = ScreenInk.Margin;

    public const double HeadBaseline = 0.085, FootBaseline = 0.963, ProgressTop = 0.104;

    public double Right => Aspect - ScreenInk.Margin;

    /// <summary>Where the lane's part ends and the figures begin: less than half for the lane, so that the figures have room.</summary>
    public double Middle => Aspect * 0.405;

    public LanePicture Lane(LaneProfile lane, Hand hand)
    {
        // Labels of distances stand between the lane and the figures.
        var width = Middle - Left - (Aspect > 1.5 ? 0.245 : 0.195);
        var gutter = 2.2 * width / LaneProfile.BoardCount;
        return new LanePicture(lane, hand, Left + gutter, Top, Left + width - gutter, Bottom - 0.008);
    }

    public FigurePanel Aim => new(Middle, Top, Right, Top + Group);

    public FigurePanel Shot => new(Middle, Top + Group + Gap, Right, Bottom - Group - Gap);

    public FigurePanel Rate => new(Middle, Bottom - Group, Right, Bottom);

    /// <summary>Both lower groups as one.</summary>
    public FigurePanel Lower => new(Middle, Shot.Top, Right, Bottom);
}
