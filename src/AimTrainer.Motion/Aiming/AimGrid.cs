namespace AimTrainer.Motion;

/// <summary>The lines that are tried: every laydown with every angle.</summary>
/// <param name="FirstBoard">First laydown, 0.5 or more.</param>
/// <param name="LastBoard">Last, 39.5 at most.</param>
/// <param name="BoardStep">0.1 to 10.</param>
/// <param name="FirstAngleDegrees">First launch angle, -10 or more.</param>
/// <param name="LastAngleDegrees">Last, 10 at most.</param>
/// <param name="AngleStepDegrees">0.05 to 5.</param>
public sealed record AimGrid(double FirstBoard, double LastBoard, double BoardStep, double FirstAngleDegrees, double LastAngleDegrees, double AngleStepDegrees)
{
    /// <summary>Most lines of a grid.</summary>
    public const int MostLines = 4000;

    /// <summary>Laydowns 8 to 34 by the board, angles -1 to 6 degrees by the quarter.</summary>
    public static AimGrid Usual { get; } = new(8, 34, 1, -1, 6, 0.25);

    /// <summary>The laydowns.</summary>
    public IReadOnlyList<double> Boards => Values(FirstBoard, LastBoard, BoardStep);

    /// <summary>The angles.</summary>
    public IReadOnlyList<double> Angles => Values(FirstAngleDegrees, LastAngleDegrees, AngleStepDegrees);

    /// <summary>Every line, angle by angle for each laydown.</summary>
    public IReadOnlyList<AimLine> Lines => [.. Boards.SelectMany(board => Angles.Select(angle => new AimLine(board, angle)))];

    /// <summary>What is wrong and what is allowed, or null.</summary>
    public string? Problem() =>
        !(FirstBoard >= 0.5 && LastBoard <= 39.5 && FirstBoard <= LastBoard && BoardStep is >= 0.1 and <= 10)
            ? FormattableString.Invariant($"laydowns {FirstBoard} to {LastBoard} by {BoardStep}; allowed: 0.5 to 39.5 by 0.1 to 10")
        : !(FirstAngleDegrees >= -10 && LastAngleDegrees <= 10 && FirstAngleDegrees <= LastAngleDegrees && AngleStepDegrees is >= 0.05 and <= 5)
            ? FormattableString.Invariant($"angles {FirstAngleDegrees} to {LastAngleDegrees} by {AngleStepDegrees}; allowed: -10 to 10 by 0.05 to 5")
        : Boards.Count * Angles.Count > MostLines ? $"{Boards.Count * Angles.Count} lines; allowed: {MostLines}; take longer steps"
        : null;

    private static double[] Values(double first, double last, double step) =>
        [.. Enumerable.Range(0, (int)Math.Floor(((last - first) / step) + 1e-9) + 1).Select(i => first + (i * step))];
}
