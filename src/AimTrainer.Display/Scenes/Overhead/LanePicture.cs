using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// Where things on the lane are in its picture: seen from above with the pins at the top, so that left and right are the bowler's. A
/// lane is 17 times as long as wide; its length is pressed together, the more the farther down: a distance d is drawn at the share
/// <c>d (L + k) / (L (d + k))</c> of the height, with L = 60 ft and k = 40 ft, which puts 15 ft at 0.45 and 40 ft at 0.83.
/// </summary>
internal sealed record LanePicture(LaneProfile Lane, Hand Hand, double Left, double Top, double Right, double Bottom)
{
    private const double Press = 40;

    public double X(LanePoint point) => Right - ((Right - Left) * point.Across.Value / Lane.Width.Value);

    public double X(Board board) => X(Lane.PointOf(board, default, Hand));

    public double Y(Feet down)
    {
        var length = LaneProfile.HeadPin.Value;
        return Bottom - ((Bottom - Top) * down.Value * (length + Press) / (length * (down.Value + Press)));
    }

    public ScreenPoint At(Board board, Feet down) => new(X(board), Y(down));

    /// <summary>Height of one board's width, so that marks can be as large as they are wide.</summary>
    public double BoardWidth => (Right - Left) / LaneProfile.BoardCount;
}
