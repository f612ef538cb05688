using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>How the balls of a comparison differ in a picture: by shape and by line first, by colour as well.</summary>
internal static class BallLook
{
    /// <summary>The sign of a ball by its place in the drill's order, from 0: corners of it in a square from -1 to 1, Y downward; none for a disc.</summary>
    public static IReadOnlyList<(double X, double Y)> Corners(int ball) => ball switch
    {
        0 => [],
        1 => [(-0.9, -0.9), (0.9, -0.9), (0.9, 0.9), (-0.9, 0.9)],
        2 => [(0, -1.1), (1.05, 0.85), (-1.05, 0.85)],
        3 => [(0, 1.1), (1.05, -0.85), (-1.05, -0.85)],
        4 => [(-1.3, -0.45), (1.3, -0.45), (1.3, 0.45), (-1.3, 0.45)],
        _ => [(-0.45, -1.3), (0.45, -1.3), (0.45, 1.3), (-0.45, 1.3)],
    };

    /// <summary>Whether the way of a ball is a line without gaps.</summary>
    public static bool IsUnbroken(int ball) => ball == 0;

    /// <summary>Whether it has the colour of a ball's way; else that of what comes next, which is told from it by everybody.</summary>
    public static bool HasTrailColour(int ball) => ball % 2 == 0;

    /// <summary>The last shot of each ball at this line, as far as the bowler is told where shots crossed.</summary>
    public static IEnumerable<(int Ball, GradedShot Shot)> Trails(SessionSnapshot snapshot) =>
        snapshot is { Block: { Order: Order.Compare order } block } && TellsAll.Crossings(block.Feedback)
            ? snapshot.LastOfEach.Select(shot => (PlaceOf(order, shot.Compared?.Role), shot))
            : [];

    /// <summary>The same without the ways of shots up to a number: one that was cleared does not come back when the next shot brings its own.</summary>
    public static SessionSnapshot WithoutWays(SessionSnapshot snapshot, int upTo) => snapshot.LastOfEach.AsEnumerable().All(shot => shot.Number > upTo)
        ? snapshot
        : snapshot with { LastOfEach = snapshot.LastOfEach.AsEnumerable().Where(shot => shot.Number > upTo).ToValueList() };

    /// <summary>The place of a role in the drill's order, from 0.</summary>
    public static int PlaceOf(Order.Compare order, string? role)
    {
        var place = 0;
        while (place < order.Balls.Count - 1 && order.Balls[place] != role)
        {
            place++;
        }

        return place;
    }
}
