using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Moves by their names: "2-and-1" is feet 2 boards, target 1 board, both inward.</summary>
public static class LineMoves
{
    /// <summary>Parallel moves first, then those that turn the line.</summary>
    /// <remarks>Source: names in Tenpin Bowling Australia's coaching tips and a target-line article; what they do is arithmetic.</remarks>
    public static ValueList<LineMove> Usual { get; } = [Of(1, 1), Of(2, 2), Of(2, 1), Of(3, 2), Of(4, 2), Of(1, 0)];

    /// <summary>Feet and target, the minus where a move goes outward: "2-and-1", "-2-and--1".</summary>
    public static string Name(LineMove move) =>
        string.Create(CultureInfo.InvariantCulture, $"{move.Feet.Boards:0.##}-and-{move.Target.Boards:0.##}");

    /// <summary>Whether feet and target move alike, so that the angle stays.</summary>
    public static bool IsParallel(LineMove move) => move.Feet == move.Target;

    private static LineMove Of(double feet, double target) => new(BoardOffset.FromBoards(feet), BoardOffset.FromBoards(target));
}
