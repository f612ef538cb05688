using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>Where one ball was seen.</summary>
/// <param name="Number">The shot's number in its session.</param>
/// <param name="Places">Nearest first.</param>
public sealed record ShotCrossings(int Number, ValueList<ShotCrossing> Places);
