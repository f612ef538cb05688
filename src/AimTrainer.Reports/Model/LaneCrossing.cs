namespace AimTrainer.Reports;

/// <summary>One known crossing of a target.</summary>
/// <param name="At">When the shot came in.</param>
/// <param name="Board">Where it crossed.</param>
/// <param name="MissBoards">Crossing less centre, positive inside.</param>
/// <param name="Held">Whether the target was held; null when that is unknown.</param>
public sealed record LaneCrossing(DateTimeOffset At, double Board, double MissBoards, bool? Held)
{
    /// <summary>Whether it is a gross miss: it is drawn and counted, and set aside in what is advised.</summary>
    public bool Gross { get; init; }

    /// <summary>Whether it was thrown in a test block, which trends are taken from.</summary>
    public bool Test { get; init; }
}
