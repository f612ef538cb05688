using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// The oil between two distances: units on each of the 39 boards where it starts and where it ends, straight lines between them.
/// What lies beyond the last stretch is as its end.
/// </summary>
/// <param name="StartFeet">Where it starts, feet past the foul line.</param>
/// <param name="EndFeet">Where it ends, farther down.</param>
/// <param name="Start">Units of oil on boards 1 to 39 from the <b>right</b> edge, at its start.</param>
/// <param name="End">The same at its end.</param>
public sealed record OilStretch(double StartFeet, double EndFeet, ValueList<double> Start, ValueList<double> End)
{
    /// <summary>Whether the oil is the same everywhere in it.</summary>
    public bool IsEven => Start.AsEnumerable().All(units => units == Start[0]) && End.AsEnumerable().All(units => units == Start[0]);

    /// <summary>Whether there is none.</summary>
    public bool IsDry => IsEven && Start[0] == 0;

    /// <summary>The units on a board at a distance inside it; boards by straight lines between their middles.</summary>
    internal double At(double feet, double boardFromRight)
    {
        var share = (feet - StartFeet) / (EndFeet - StartFeet);
        return ((1 - share) * Across(Start, boardFromRight)) + (share * Across(End, boardFromRight));
    }

    private static double Across(ValueList<double> units, double boardFromRight)
    {
        var board = Math.Clamp(boardFromRight, 1, LaneProfile.BoardCount);
        var below = Math.Min((int)board, LaneProfile.BoardCount - 1);
        return ((below + 1 - board) * units[below - 1]) + ((board - below) * units[below]);
    }
}
