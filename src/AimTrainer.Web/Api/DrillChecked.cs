using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What a check of a drill's text found.</summary>
/// <param name="Good">Whether it may be kept.</param>
/// <param name="Problems">Everything that is wrong with it.</param>
public sealed record DrillChecked(bool Good, ValueList<FileProblem> Problems);
