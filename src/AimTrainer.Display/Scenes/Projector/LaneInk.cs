using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>Puts shapes on the lane, and remembers which pieces of it are taken, so that words find a free one.</summary>
internal sealed class LaneInk(LaneProfile lane, Hand hand, BowlerView view, LanePalette palette)
{
    private readonly List<Shape<LanePoint>> _shapes = [];
    private readonly List<(double Near, double Far, double From, double To)> _taken = [];

    public LaneProfile Lane => lane;

    public Hand Hand => hand;

    public BowlerView View => view;

    public LanePalette Palette => palette;

    public Scene<LanePoint> Scene() => new(LanePalette.Ground, _shapes.ToValueList());

    public void Add(Shape<LanePoint> shape) => _shapes.Add(shape);

    public LanePoint At(Board board, Feet feet) => lane.PointOf(board, feet, hand);

    /// <summary>A rectangle whose sides across the lane lie exactly on two boards.</summary>
    public void Box(Board from, Board to, Feet near, Feet far, Colour colour) =>
        Add(new Shape<LanePoint>.Polygon([At(from, near), At(to, near), At(to, far), At(from, far)], colour));

    /// <summary>The corners of a diamond that looks as high as wide.</summary>
    public LanePoint[] Diamond(LanePoint centre, Inches radius)
    {
        var along = HalfLength(radius, centre.Down);
        return [Moved(centre, 0, -along), Moved(centre, -radius.Value, 0), Moved(centre, 0, along), Moved(centre, radius.Value, 0)];
    }

    /// <summary>Half of how long a round thing is along the lane, in inches.</summary>
    public double HalfLength(Inches radius, Feet at) => view.LengthSeenAs(Inches.FromInches(2 * radius.Value), at).Value / 2;

    public static LanePoint Moved(LanePoint point, double acrossInches, double downInches) =>
        new(Inches.FromInches(point.Across.Value + acrossInches), Feet.FromFeet(point.Down.Value + (downInches / 12)));

    /// <summary>Takes a piece of the lane, across from one place to another in inches.</summary>
    public void Take(double nearFeet, double farFeet, double fromInches, double toInches) =>
        _taken.Add((nearFeet, farFeet, Math.Min(fromInches, toInches), Math.Max(fromInches, toInches)));

    /// <summary>Takes a target's piece of the lane.</summary>
    public void Take(Target target, Feet near, Feet far) => Take(
        near.Value, far.Value, At(target.OutsideEdge, near).Across.Value, At(target.InsideEdge, near).Across.Value);

    public bool IsFree(double nearFeet, double farFeet, double fromInches = double.NegativeInfinity, double toInches = double.PositiveInfinity) =>
        !_taken.Any(taken => nearFeet < taken.Far && taken.Near < farFeet && fromInches < taken.To && taken.From < toInches);
}
