namespace AimTrainer.Motion;

/// <summary>Where a ball is at some distance.</summary>
/// <param name="Slip">Slip left, m/s.</param>
/// <param name="Board">The bowler's board.</param>
/// <param name="Seconds">Time from the laydown.</param>
/// <param name="SlipRate">Change of the slip a metre; used only inside a step.</param>
internal readonly record struct PathState(double Slip, double Board, double Seconds, double SlipRate);
