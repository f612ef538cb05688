namespace AimTrainer.Analysis;

/// <summary>What one more unit of something goes with.</summary>
/// <param name="Name">"speedMph" or "revsRpm": the unit is in the name.</param>
/// <param name="BoardsAUnit">Boards for each mph or rpm more, positive inside, the other explanations held still.</param>
public sealed record ExplainedBy(string Name, BoundedEstimate BoardsAUnit);
