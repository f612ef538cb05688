using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// The three numbers in which today's lane may differ from its sheet: bare doubles whose names carry the unit. The pattern is
/// stretched as a whole, so that its shape stays that of the sheet.
/// </summary>
/// <param name="OilFriction">Friction of a board under much oil.</param>
/// <param name="DryFriction">Friction of a board without oil.</param>
/// <param name="PatternFeet">Where the oil ends; not a number for a lane whose oil does not end.</param>
public readonly record struct LaneNumbers(double OilFriction, double DryFriction, double PatternFeet)
{
    /// <summary>How many there are.</summary>
    public const int Count = 3;

    /// <summary>Allowed frictions in the oil.</summary>
    public const double LeastOilFriction = 0.001, MostOilFriction = 0.15;

    /// <summary>Allowed frictions of dry boards.</summary>
    public const double LeastDryFriction = 0.05, MostDryFriction = 0.5;

    /// <summary>How much shorter and longer than its sheet a pattern may be, and where it may end at all.</summary>
    public const double ShortestShare = 0.6, LongestShare = 1.4, ShortestFeet = 15, LongestFeet = 58;

    /// <summary>One of the numbers.</summary>
    public double this[LaneParameter parameter] => parameter switch
    {
        LaneParameter.OilFriction => OilFriction,
        LaneParameter.DryFriction => DryFriction,
        _ => PatternFeet,
    };

    /// <summary>Those of a sheet.</summary>
    public static LaneNumbers Of(LaneSurface sheet) => new(sheet.OilFriction, sheet.DryFriction, sheet.PatternFeet ?? double.NaN);

    /// <summary>What a fit may come to on a lane.</summary>
    public static (double Low, double High) Allowed(LaneParameter parameter, LaneSurface sheet) => parameter switch
    {
        LaneParameter.OilFriction => (LeastOilFriction, MostOilFriction),
        LaneParameter.DryFriction => (LeastDryFriction, MostDryFriction),
        _ => (
            Math.Max(ShortestFeet, ShortestShare * (sheet.PatternFeet ?? double.NaN)),
            Math.Min(LongestFeet, LongestShare * (sheet.PatternFeet ?? double.NaN))),
    };

    /// <summary>The same with another value of one of them.</summary>
    public LaneNumbers With(LaneParameter parameter, double value) => parameter switch
    {
        LaneParameter.OilFriction => this with { OilFriction = value },
        LaneParameter.DryFriction => this with { DryFriction = value },
        _ => this with { PatternFeet = value },
    };

    /// <summary>The lane with these numbers and the oil of the sheet, stretched.</summary>
    /// <exception cref="ArgumentException">A friction is outside what a lane can have, or the pattern does not end on the lane.</exception>
    public LaneSurface On(LaneSurface sheet)
    {
        if (sheet.PatternFeet is not { } written || double.IsNaN(PatternFeet) || PatternFeet == written)
        {
            return sheet.With(null, DryFriction, OilFriction);
        }

        if (!(PatternFeet > 0 && PatternFeet < LaneSurface.EndFeet))
        {
            throw new ArgumentException(FormattableString.Invariant($"the pattern ends at {PatternFeet} ft; allowed: more than 0, less than {LaneSurface.EndFeet}"));
        }

        var share = PatternFeet / written;
        var oiled = sheet.Oil.AsEnumerable().TakeWhile(stretch => stretch.StartFeet < written).ToList();
        var feet = 0.0;
        var stretched = new List<OilStretch>();
        foreach (var stretch in oiled)
        {
            var end = stretch.EndFeet == written ? PatternFeet : stretch.EndFeet * share;
            stretched.Add(stretch with { StartFeet = feet, EndFeet = end });
            feet = end;
        }

        var none = new double[LaneProfile.BoardCount].ToValueList();
        stretched.Add(new OilStretch(feet, LaneSurface.EndFeet, none, none));
        return sheet.With(stretched.ToValueList(), DryFriction, OilFriction);
    }
}
