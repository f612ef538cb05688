using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Everything that is told of the accuracy of a number of shots.</summary>
/// <param name="Shots">How many.</param>
/// <param name="PerTarget">All shots, by target.</param>
/// <param name="Line">All shots at lines as a whole; null when none was thrown at a line.</param>
/// <param name="Groups">The same for the shots that belong together, by grouping in the order first seen.</param>
/// <param name="GroupingsUnknown">Groupings of which no shot says where it belongs, and why.</param>
/// <param name="EarlyAndLate">By target: the first ten shots of the sessions against the last whole ten.</param>
public sealed record AccuracyReport(
    int Shots,
    ValueList<TargetAccuracy> PerTarget,
    LineAccuracy? Line,
    ValueList<AccuracyGroup> Groups,
    ValueList<UnknownGrouping> GroupingsUnknown,
    ValueList<TargetComparison> EarlyAndLate);
