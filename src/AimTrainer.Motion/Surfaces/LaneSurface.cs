using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// What a ball feels of a lane: oil, and the friction of oiled and of dry boards. Never changes; it is prepared once for both hands, so
/// keep it for many paths. Bare doubles whose names carry the unit.
/// </summary>
/// <remarks>
/// Friction = dry + (oiled - dry) (1 - exp(-units / scale)), the units by straight lines between the middles of boards and between the
/// distances of the pattern. This law is a choice, not a finding: published work has the two ends only.
/// </remarks>
public sealed class LaneSurface
{
    /// <summary>Where the surface ends for a ball: the head pin, 60 ft.</summary>
    public const double EndFeet = 60;

    /// <summary>Highest friction that is worked out.</summary>
    public const double MostFriction = 0.6;

    private readonly FrictionGrid _right;
    private readonly FrictionGrid _left;

    /// <summary>Prepares a lane.</summary>
    /// <param name="oil">Stretches that follow one another from 0 ft to 60 ft or farther (see <see cref="OilPattern"/>).</param>
    /// <param name="dryFriction">Friction of a board without oil, 0 to 0.6.</param>
    /// <param name="oilFriction">Friction of a board under much oil, 0 to 0.6.</param>
    /// <param name="oilScaleUnits">Units of oil at which 63 % of the way from dry to oiled is reached, 0.01 to 1000.</param>
    /// <param name="arrowsFeet">Where <see cref="PathEnd.ArrowsBoard"/> is taken, more than 0 and less than 60 ft.</param>
    /// <param name="widthInches">Width of the 39 boards, 41 to 42 in.</param>
    /// <param name="stepMetres">
    /// Longest step of the integration, 0.005 to 1 m. When null each stretch takes what its oil needs: 0.3 m where it is smooth, down to
    /// 0.05 m where it jumps from board to board. How exact that is: <c>docs/motion.md</c>.
    /// </param>
    /// <exception cref="ArgumentException">A value is not a number or outside its range, or the stretches leave a gap.</exception>
    public LaneSurface(
        ValueList<OilStretch> oil,
        double dryFriction,
        double oilFriction,
        double oilScaleUnits,
        double arrowsFeet = 15,
        double widthInches = 41.5,
        double? stepMetres = null)
    {
        Require(dryFriction, 0, MostFriction, "the friction of a dry board");
        Require(oilFriction, 0, MostFriction, "the friction of an oiled board");
        Require(oilScaleUnits, 0.01, 1000, "the oil scale in units");
        Require(arrowsFeet, 1, EndFeet - 1, "the distance of the arrows in feet");
        Require(widthInches, LaneProfile.NarrowestWidth.Value, LaneProfile.WidestWidth.Value, "the width of the lane in inches");
        Require(stepMetres ?? 1, 0.005, 1, "the step in metres");
        RequireOil(oil);
        (Oil, DryFriction, OilFriction, OilScaleUnits) = (oil, dryFriction, oilFriction, oilScaleUnits);
        (ArrowsFeet, WidthInches, StepMetres) = (arrowsFeet, widthInches, stepMetres);
        _right = new FrictionGrid(this, Hand.Right);
        _left = new FrictionGrid(this, Hand.Left);
    }

    /// <summary>The oil, from 0 ft on.</summary>
    public ValueList<OilStretch> Oil { get; }

    /// <summary>Friction of a board without oil.</summary>
    public double DryFriction { get; }

    /// <summary>Friction of a board under much oil.</summary>
    public double OilFriction { get; }

    /// <summary>Units of oil at which 63 % of the way from dry to oiled is reached.</summary>
    public double OilScaleUnits { get; }

    /// <summary>Where the board at the arrows is taken.</summary>
    public double ArrowsFeet { get; }

    /// <summary>Width of the 39 boards.</summary>
    public double WidthInches { get; }

    /// <summary>Longest step of the integration; null when each stretch takes what its oil needs.</summary>
    public double? StepMetres { get; }

    /// <summary>Where the last oil ends; null when there is none, or when it reaches the pins.</summary>
    public double? PatternFeet
    {
        get
        {
            var dry = Oil.AsEnumerable().Reverse().TakeWhile(stretch => stretch.IsDry).LastOrDefault();
            return dry is { StartFeet: > 0 } ? dry.StartFeet : null;
        }
    }

    /// <summary>A lane with the same friction everywhere.</summary>
    /// <param name="friction">0 to 0.6.</param>
    /// <exception cref="ArgumentException">Not a number, or outside the range.</exception>
    public static LaneSurface Even(double friction) => new(OilPattern.None, friction, friction, 1);

    /// <summary>The units of oil at a place.</summary>
    /// <param name="feet">0 to 60 ft.</param>
    /// <param name="boardFromRight">From the right edge; beyond boards 1 and 39 it is as there.</param>
    public double OilAt(double feet, double boardFromRight) =>
        Oil.AsEnumerable().Last(stretch => stretch.StartFeet <= Math.Max(feet, 0)).At(feet, boardFromRight);

    /// <summary>The friction at a place, as the paths feel it.</summary>
    /// <param name="feet">0 to 60 ft.</param>
    /// <param name="boardFromRight">From the right edge; beyond boards 1 and 39 it is as there.</param>
    public double FrictionAt(double feet, double boardFromRight) => _right.FrictionAt(feet * FrictionGrid.MetresPerFoot, boardFromRight);

    /// <summary>The same lane with other frictions or another oil, for fitting and for wear.</summary>
    /// <param name="oil">Other stretches, or these.</param>
    /// <param name="dryFriction">Another friction of dry boards, or this.</param>
    /// <param name="oilFriction">Another friction of oiled boards, or this.</param>
    /// <exception cref="ArgumentException">As for a new lane.</exception>
    public LaneSurface With(ValueList<OilStretch>? oil = null, double? dryFriction = null, double? oilFriction = null) => new(
        oil ?? Oil, dryFriction ?? DryFriction, oilFriction ?? OilFriction, OilScaleUnits, ArrowsFeet, WidthInches, StepMetres);

    internal FrictionGrid GridFor(Hand hand) => hand == Hand.Right ? _right : _left;

    private static void Require(double value, double low, double high, string what)
    {
        if (!(value >= low && value <= high))
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{what} is {value}; allowed: {low} to {high}"));
        }
    }

    private static void RequireOil(ValueList<OilStretch> oil)
    {
        var feet = 0.0;
        foreach (var stretch in oil)
        {
            if (stretch.StartFeet != feet || !(stretch.EndFeet > feet))
            {
                throw new ArgumentException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"a stretch of oil from {stretch.StartFeet} to {stretch.EndFeet} ft follows {feet} ft; allowed: distances that rise without a gap"));
            }

            feet = stretch.EndFeet;
            foreach (var units in stretch.Start.AsEnumerable().Concat(stretch.End))
            {
                Require(units, 0, OilPattern.MostUnits, "the oil on a board in units");
            }

            if (stretch.Start.Count != LaneProfile.BoardCount || stretch.End.Count != LaneProfile.BoardCount)
            {
                throw new ArgumentException($"a stretch of oil has {stretch.Start.Count} and {stretch.End.Count} boards; allowed: {LaneProfile.BoardCount}");
            }
        }

        if (feet < EndFeet)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"the oil is told up to {feet} ft; allowed: up to {EndFeet} ft or farther"));
        }
    }
}
