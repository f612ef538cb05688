using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A shot of a record.</summary>
/// <param name="Shot">As it stands now.</param>
/// <param name="AsFirstGraded">As it was before corrections; null when it was never corrected.</param>
/// <param name="NextWidths">The widths that followed it at the time.</param>
public sealed record RecordedShot(GradedShot Shot, GradedShot? AsFirstGraded, ValueList<NextWidth> NextWidths);
