using AimTrainer.Motion;

namespace AimTrainer.Web;

/// <summary>A bowler's usual throw and scatter from the record.</summary>
/// <param name="Bowler">The throw and its scatter.</param>
/// <param name="Shots">From so many shots.</param>
/// <param name="Simulated">Whether they are simulated, which is to say invented.</param>
public sealed record ScatterFound(AimBowlerAnswer Bowler, int Shots, bool Simulated);
