using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>How a lane is fitted.</summary>
public sealed record FitSettings
{
    /// <summary>Standard deviation of the error of each measured board, more than 0 up to 3; estimated from the shots when null.</summary>
    public double? NoiseBoards { get; init; }

    /// <summary>What is taken from the sheet as it is.</summary>
    public ValueList<LaneParameter> Keep { get; init; } = [];
}
