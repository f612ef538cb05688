using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>
/// What one lane is like: its width and its marks. Data, not code, because published sources disagree about the marks.
/// </summary>
public sealed record LaneProfile
{
    /// <summary>Boards across every lane.</summary>
    public const int BoardCount = 39;

    /// <summary>Narrowest lane allowed by the rules.</summary>
    public static Inches NarrowestWidth { get; } = Inches.FromInches(41);

    /// <summary>Widest lane allowed by the rules.</summary>
    public static Inches WidestWidth { get; } = Inches.FromInches(42);

    /// <summary>Foul line to the centre of the head pin: 60 ft.</summary>
    public static Feet HeadPin { get; } = Feet.FromFeet(60);

    /// <summary>What people call this lane.</summary>
    public required string Name { get; init; }

    /// <summary>Width of the 39 boards together, 41 to 42 in.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Narrower or wider.</exception>
    [JsonPropertyName("widthInches")]
    public required Inches Width
    {
        get;
        init
        {
            FixedPoint.InRange(value.Value, NarrowestWidth.Value, WidestWidth.Value, nameof(Width));
            field = value;
        }
    }

    /// <summary>
    /// The distance used for a target "at the arrows" and for line arithmetic. The arrows themselves are staggered; their own
    /// distances are for drawing. 1 to 60 ft.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Nearer or farther.</exception>
    [JsonPropertyName("arrowsFeet")]
    public required Feet ArrowsDistance
    {
        get;
        init
        {
            FixedPoint.InRange(value.Value, 1, HeadPin.Value, nameof(ArrowsDistance));
            field = value;
        }
    }

    /// <summary>
    /// How far the ball is taken to run straight: a launch angle is worked out only from crossings up to here. Depends on the
    /// oil, so it is a setting. 0 to 60 ft; 0 works out no angle.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Nearer or farther.</exception>
    [JsonPropertyName("straightFeet")]
    public required Feet StraightDistance
    {
        get;
        init
        {
            FixedPoint.InRange(value.Value, 0, HeadPin.Value, nameof(StraightDistance));
            field = value;
        }
    }

    /// <summary>All marks, in any order.</summary>
    public required ValueList<LaneMarker> Markers { get; init; }

    /// <summary>Width of one board.</summary>
    [JsonIgnore]
    public Inches BoardWidth => Inches.FromInches(Width.Value / BoardCount);

    /// <summary>How wide a number of boards is on this lane.</summary>
    public Inches InchesOf(BoardOffset boards) => Inches.FromInches(boards.Boards * Width.Value / BoardCount);

    /// <summary>How many boards a width is on this lane, to 0.0001.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than a <see cref="BoardOffset"/> can hold.</exception>
    public BoardOffset BoardsOf(Inches across) => BoardOffset.FromBoards(across.Value * BoardCount / Width.Value);

    /// <summary>The point on the lane of a bowler's board. The only place where the hand matters.</summary>
    public LanePoint PointOf(Board board, Feet distance, Hand hand)
    {
        var fromRight = hand == Hand.Right ? board : board.Mirrored();
        return new LanePoint(Inches.FromInches((fromRight.Boards - 0.5) * Width.Value / BoardCount), distance);
    }

    /// <summary>The bowler's board at a point on the lane.</summary>
    public Board BoardOf(LanePoint point, Hand hand)
    {
        var fromRight = Board.FromBoards((point.Across.Value * BoardCount / Width.Value) + 0.5);
        return hand == Hand.Right ? fromRight : fromRight.Mirrored();
    }

    /// <summary>
    /// The mark of a kind, numbered from 1 at the bowler's ball-hand edge ("arrow 2" is the second arrow from there), or null
    /// when the lane has fewer.
    /// </summary>
    public LaneMarker? Find(MarkerKind kind, int number, Hand hand)
    {
        var ofKind = Markers.AsEnumerable().Where(marker => marker.Kind == kind)
            .OrderBy(marker => BoardFor(marker, hand)).ThenBy(marker => marker.Distance).ToList();
        return number >= 1 && number <= ofKind.Count ? ofKind[number - 1] : null;
    }

    /// <summary>The bowler's board of a mark.</summary>
    public static Board BoardFor(LaneMarker marker, Hand hand) => hand == Hand.Right ? marker.FromRight : marker.FromRight.Mirrored();
}
