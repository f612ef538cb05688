using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What a check of a lane's text found.</summary>
/// <param name="Good">Whether nothing is wrong with it.</param>
/// <param name="Problems">What is wrong, with line and JSON path.</param>
public sealed record LaneChecked(bool Good, ValueList<FileProblem> Problems);
