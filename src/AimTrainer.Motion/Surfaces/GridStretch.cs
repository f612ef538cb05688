namespace AimTrainer.Motion;

/// <summary>A part of the lane that is integrated in equal steps.</summary>
/// <param name="Start">Metres past the foul line.</param>
/// <param name="End">Metres past the foul line.</param>
/// <param name="CellStart">Where the oil of its cells is counted from, metres past the foul line.</param>
/// <param name="Steps">How many steps.</param>
/// <param name="FirstCell">Its cell between boards 1 and 2.</param>
/// <param name="Even">The friction when it is the same everywhere in it, else not a number: then it needs no steps.</param>
internal readonly record struct GridStretch(double Start, double End, double CellStart, int Steps, int FirstCell, double Even);
