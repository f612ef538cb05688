namespace AimTrainer.Domain;

/// <summary>A target that was read, with the place it was read from.</summary>
/// <param name="Plan">The target.</param>
/// <param name="Reader">Where it stands.</param>
internal sealed record ReadTarget(TargetPlan Plan, ObjectReader Reader);
