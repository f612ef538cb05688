using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>The lane on the screen: boards, arrows, dots, target, distances, and where the ball went as far as that was told.</summary>
internal static class LanePanel
{
    private const double TargetHalf = 0.024, LabelPitch = 0.085;

    public static void Wood(ScreenInk ink, LanePicture lane, Colour arrows)
    {
        var gutter = 2.2 * lane.BoardWidth;
        ink.Box(lane.Left - gutter, lane.Top, lane.Left, lane.Bottom, ink.Palette.Boards);
        ink.Box(lane.Right, lane.Top, lane.Right + gutter, lane.Bottom, ink.Palette.Boards);
        ink.Box(lane.Left, lane.Top, lane.Right, lane.Bottom, ink.Palette.Lane);
        for (var board = 5; board < LaneProfile.BoardCount; board += 5)
        {
            var x = lane.X(Board.FromBoards(board));
            ink.Add(new Shape<ScreenPoint>.Stroke([new ScreenPoint(x, lane.Top), new ScreenPoint(x, lane.Bottom)], 0.002, ink.Palette.Boards));
        }

        ink.Box(lane.Left - gutter, lane.Bottom, lane.Right + gutter, lane.Bottom + 0.008, ink.Palette.Mark);
        foreach (var marker in lane.Lane.Markers)
        {
            Mark(ink, lane, marker, arrows);
        }
    }

    /// <summary>The targets as they are graded, each with its distance beside it.</summary>
    public static void Targets(ScreenInk ink, LanePicture lane, Aim? shown, Aim? next, double labelRight)
    {
        foreach (var target in next?.Targets ?? [])
        {
            var (left, right, y) = Place(lane, target.Target);
            ink.Add(new Shape<ScreenPoint>.Stroke(
                [new(left, y - TargetHalf), new(right, y - TargetHalf), new(right, y + TargetHalf), new(left, y + TargetHalf)], 0.004, ink.Palette.Next, Closed: true));
        }

        for (var i = 1; i < shown?.Targets.Count; i++)
        {
            var (near, far) = (shown.Targets[i - 1].Target, shown.Targets[i].Target);
            Line(ink, lane, [new Crossing(near.Distance, near.Centre), new Crossing(far.Distance, far.Centre)], 0.004, ink.Palette.Target);
        }

        var lowest = double.PositiveInfinity;
        foreach (var target in shown?.Targets ?? [])
        {
            var (left, right, y) = Place(lane, target.Target);
            ink.Box(left, y - TargetHalf, right, y + TargetHalf, ink.Palette.Target);
            var baseline = Math.Max(y + (ScreenInk.Small / 2), lane.Top + ScreenInk.Small);
            if (baseline <= lowest - LabelPitch)
            {
                var feet = SceneWords.Short(target.Target.Distance.Value);
                var x = lane.Right + (3.4 * lane.BoardWidth);
                ink.Write(TextFit.First(labelRight - x, ScreenInk.Small, false, $"{feet} ft", $"{feet}'"), x, baseline, ScreenInk.Small, ink.Palette.Text);
                lowest = baseline;
            }
        }
    }

    /// <summary>The last shots of the block at the target, older ones fainter, and the way of the newest.</summary>
    public static void Shots(ScreenInk ink, LanePicture lane, SessionSnapshot snapshot, LastShot? last)
    {
        if (snapshot.Block is { Order: not Order.Compare } block && TellsAll.Crossings(block.Feedback))
        {
            for (var i = snapshot.LastShots.Count - 1; i > 0; i--)
            {
                foreach (var result in snapshot.LastShots[i] is { VoidReason: null } shot ? shot.Targets : [])
                {
                    if (result is { Crossing.Board: { } board, Grade: { } grade })
                    {
                        ink.Sign(grade.Holds, lane.X(Seen(board)), lane.Y(result.Target.Distance), 0.008, Fade(i));
                    }
                }
            }
        }

        if (last is not { Told: { } told, Shot: { } newest })
        {
            return;
        }

        if (last.TellsWay && snapshot.Block is not { Order: Order.Compare })
        {
            var way = ShotWay.Of(newest.Shot);
            Line(ink, lane, way, 0.006, ink.Palette.Trail);
        }

        foreach (var target in told.Targets)
        {
            if (target.Miss is { } miss && last.TargetOf(target) is { } place)
            {
                ink.Sign(last.HeldOf(target), lane.X(Seen(place.Centre + miss)), lane.Y(place.Distance), 0.016);
            }
        }
    }

    /// <summary>In a comparison the last way of each ball, until the coach clears them.</summary>
    public static void Balls(ScreenInk ink, LanePicture lane, SessionSnapshot snapshot)
    {
        foreach (var (ball, shot) in BallLook.Trails(snapshot))
        {
            var way = ShotWay.Of(shot.Shot);
            Line(ink, lane, way, 0.006, BallLook.HasTrailColour(ball) ? ink.Palette.Trail : ink.Palette.Next, BallLook.IsUnbroken(ball));
            foreach (var place in way)
            {
                ink.BallSign(ball, lane.X(Seen(place.Board)), lane.Y(place.Distance), 0.011);
            }
        }
    }

    /// <summary>A ball far out in the gutter is drawn at its edge, so that it stays in the picture of the lane.</summary>
    private static Board Seen(Board board) => Board.FromBoards(Math.Clamp(board.Boards, -1.2, 41.2));

    /// <summary>Opacity of an older shot: 0 is the newest.</summary>
    public static byte Fade(int age) => (byte)Math.Max(90, 240 - (18 * age));

    private static (double Left, double Right, double Y) Place(LanePicture lane, Target target)
    {
        var (one, other) = (lane.X(target.OutsideEdge), lane.X(target.InsideEdge));
        return (Math.Min(one, other), Math.Max(one, other), lane.Y(target.Distance));
    }

    /// <summary>A way on the lane; straight pieces of it bend in a picture whose length is pressed together.</summary>
    private static void Line(ScreenInk ink, LanePicture lane, ValueList<Crossing> places, double width, Colour colour, bool unbroken = true)
    {
        const int Pieces = 6;
        if (places.Count < 2)
        {
            return;
        }

        var points = new List<ScreenPoint> { lane.At(Seen(places[0].Board), places[0].Distance) };
        for (var i = 1; i < places.Count; i++)
        {
            var (from, to) = (places[i - 1], places[i]);
            for (var piece = 1; piece <= Pieces; piece++)
            {
                var share = (double)piece / Pieces;
                var down = Feet.FromFeet(from.Distance.Value + ((to.Distance.Value - from.Distance.Value) * share));
                var board = Board.FromBoards(from.Board.Boards + ((to.Board - from.Board).Boards * share));
                points.Add(lane.At(Seen(board), down));
            }
        }

        if (unbroken)
        {
            ink.Add(new Shape<ScreenPoint>.Stroke(points.ToValueList(), width, colour));
            return;
        }

        for (var i = 0; i + 1 < points.Count; i += 2)
        {
            ink.Add(new Shape<ScreenPoint>.Stroke([points[i], points[i + 1]], width, colour));
        }
    }

    private static void Mark(ScreenInk ink, LanePicture lane, LaneMarker marker, Colour arrows)
    {
        var (x, y) = (lane.X(lane.Lane.PointOf(marker.FromRight, marker.Distance, Hand.Right)), lane.Y(marker.Distance));
        switch (marker.Kind)
        {
            case MarkerKind.Arrow:
                ink.Polygon(arrows, (x, y - 0.016), (x + 0.007, y + 0.012), (x - 0.007, y + 0.012));
                break;
            case MarkerKind.Dot:
                ink.Add(new Shape<ScreenPoint>.Ellipse(new ScreenPoint(x, y), 0.003, 0.003, ink.Palette.Mark));
                break;
            default:
                ink.Box(x - 0.002, y - 0.01, x + 0.002, y + 0.01, ink.Palette.Mark);
                break;
        }
    }
}
