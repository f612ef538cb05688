using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A stretch of boards at one distance, through which the ball should go. What is shown is this very value, and so is what is graded.</summary>
public readonly record struct Target
{
    /// <summary>Narrowest and widest target, in boards.</summary>
    public const double Narrowest = 0.5, Widest = 20;

    /// <summary>Makes a target.</summary>
    /// <param name="centre">Its middle: on the lane, board 0.5 to 39.5.</param>
    /// <param name="width">Its whole width, 0.5 to 20 boards.</param>
    /// <param name="distance">Feet past the foul line, 0 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    [JsonConstructor]
    public Target(Board centre, BoardOffset width, Feet distance)
    {
        FixedPoint.InRange(centre.Boards, Board.NearEdge.Boards, Board.FarEdge.Boards, nameof(centre));
        FixedPoint.InRange(width.Boards, Narrowest, Widest, nameof(width));
        FixedPoint.InRange(distance.Value, 0, LaneProfile.HeadPin.Value, nameof(distance));
        Centre = centre;
        Width = width;
        Distance = distance;
    }

    /// <summary>Its middle.</summary>
    [JsonPropertyName("centreBoard")]
    public Board Centre { get; }

    /// <summary>Its whole width.</summary>
    [JsonPropertyName("widthBoards")]
    public BoardOffset Width { get; }

    /// <summary>Where along the lane.</summary>
    [JsonPropertyName("distanceFeet")]
    public Feet Distance { get; }

    /// <summary>Its edge toward the bowler's own gutter.</summary>
    [JsonIgnore]
    public Board OutsideEdge => Centre - Width.Times(0.5m);

    /// <summary>Its edge toward the far side.</summary>
    [JsonIgnore]
    public Board InsideEdge => Centre + Width.Times(0.5m);
}
