using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>What is said of the balls of a comparison.</summary>
internal static class BallWords
{
    public const string Towel = "Wipe the ball with a dry towel; no liquids during play.";

    public const string TowelShort = "Wipe the ball: dry towel, no liquids.";

    public const string TowelOnLane = "Dry towel first.";

    /// <summary>How many good throws are wanted of the ball that is due, when that gives nothing away that is withheld.</summary>
    public static string? Wanted(SessionSnapshot snapshot, BallTurn turn) =>
        snapshot.Block is { } block && TellsAll.Holds(block.Feedback) && CellOf(turn) is { StillWanted: > 0 } cell
            ? $"{SceneWords.Whole(cell.StillWanted)} more good {(cell.StillWanted == 1 ? "throw" : "throws")}"
            : null;

    /// <summary>The ball of the newest shot, when it was another than the one that was due; else null.</summary>
    public static string? OtherThanDue(SessionSnapshot snapshot) =>
        snapshot is { Turn: not null, LastShots: { Count: > 0 } shots } && shots[0] is { VoidReason: null, Compared: { IsOtherThanDue: true } thrown }
            ? $"Shot {SceneWords.Whole(shots[0].Number)} was {thrown.Ball}, not {thrown.Due}"
            : null;

    /// <summary>The cell of the ball that is due.</summary>
    public static BallCell? CellOf(BallTurn turn) => turn.Balls.FirstOrDefault(cell => cell.Role == turn.Due.Role);
}
