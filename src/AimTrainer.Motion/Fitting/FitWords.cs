using System.Globalization;

namespace AimTrainer.Motion;

/// <summary>Says why shots cannot tell a number of the lane, and what would.</summary>
/// <param name="shots">The shots.</param>
/// <param name="lane">What the fit came to.</param>
/// <param name="sheet">The lane's sheet.</param>
/// <param name="noise">Noise of a board.</param>
internal sealed class FitWords(IReadOnlyList<FitShot> shots, LaneNumbers lane, LaneSurface sheet, double noise)
{
    /// <summary>Limits wider than these tell nothing: half of a friction to either side, and four feet.</summary>
    private const double WidestShare = 1, WidestFeet = 8;

    /// <summary>Shots that differ by less are alike.</summary>
    private const double AlikeBoards = 2, AlikeMph = 0.7, AlikeRevs = 40;

    /// <summary>Two numbers that hang together more closely are hardly parted.</summary>
    private const double Together = 0.95;

    /// <summary>How many feet of dry lane a ball must have been seen on.</summary>
    private const double SeenDryFeet = 4;

    /// <summary>How far down oil shows in where a ball is.</summary>
    private const double SeenOilFeet = 25;

    /// <summary>A number's name.</summary>
    public static string Of(LaneParameter parameter) => parameter switch
    {
        LaneParameter.OilFriction => "friction of the oil",
        LaneParameter.DryFriction => "friction of dry boards",
        _ => "pattern end",
    };

    /// <summary>Why a number cannot be told; null when its limits are narrow enough to be of use.</summary>
    public string? WhyNot(LaneParameter parameter, double? low, double? high, List<LaneParameter> free, double[,]? covariance)
    {
        var widest = parameter == LaneParameter.PatternFeet ? WidestFeet : WidestShare * lane[parameter];
        return low is { } from && high is { } to && to - from <= widest ? null : Reason(parameter, free, covariance);
    }

    private string Reason(LaneParameter parameter, List<LaneParameter> free, double[,]? covariance)
    {
        var farthest = shots.Max(shot => shot.Boards.AsEnumerable().Max(board => board.Feet));
        if (parameter != LaneParameter.OilFriction && sheet.PatternFeet is { } written && farthest < Math.Max(written, lane.PatternFeet) + SeenDryFeet)
        {
            return Text($"no ball was seen on the dry boards beyond the oil: the farthest crossing is at {farthest:0.#} ft; measure one at 50 ft or at the pins");
        }

        if (farthest < SeenOilFeet)
        {
            return Text($"no ball was seen beyond {farthest:0.#} ft, where friction has hardly bent its way; measure a crossing downlane");
        }

        if (shots.Max(shot => shot.RevsRpm * Math.Abs(Math.Sin(shot.AxisRotationDegrees * Math.PI / 180))) < AlikeRevs)
        {
            return "the balls hardly turn sideways, so they hardly hook and friction hardly bends their way; throw some that hook";
        }

        if (IsOneThrow())
        {
            return Text($"every shot ran on nearly one line at one speed, so {Others(parameter, free)} can make up for it; throw some on other lines or at other speeds");
        }

        if (covariance is not null && Partner(free.IndexOf(parameter), covariance) is { } partner)
        {
            return $"it and the {Of(free[partner])} can make up for each other in these shots; throw some on other lines or at other speeds";
        }

        return Text($"too few shots for their noise: {shots.Count} at {noise:0.00} boards");
    }

    private bool IsOneThrow() => Range(shot => shot.Boards.AsEnumerable().MinBy(board => board.Feet).Board) < AlikeBoards
        && Range(shot => Nearest(shot, lane.PatternFeet is double.NaN ? 40 : lane.PatternFeet)) < 2 * AlikeBoards
        && Range(shot => shot.SpeedMph) < AlikeMph
        && Range(shot => shot.RevsRpm) < AlikeRevs;

    private double Range(Func<FitShot, double> value) => shots.Max(value) - shots.Min(value);

    private static double Nearest(FitShot shot, double feet) => shot.Boards.AsEnumerable().MinBy(board => Math.Abs(board.Feet - feet)).Board;

    private static string Others(LaneParameter parameter, List<LaneParameter> free) =>
        free.Count == 1 ? "the throws" : string.Join(" or ", free.Where(one => one != parameter).Select(one => $"the {Of(one)}"));

    private static int? Partner(int which, double[,] covariance)
    {
        for (var other = 0; other < covariance.GetLength(0); other++)
        {
            if (other != which && Math.Abs(covariance[which, other]) > Together * Math.Sqrt(covariance[which, which] * covariance[other, other]))
            {
                return other;
            }
        }

        return null;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
