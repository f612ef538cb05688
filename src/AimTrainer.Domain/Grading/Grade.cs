namespace AimTrainer.Domain;

/// <summary>What a crossing was awarded.</summary>
/// <param name="Name">The band's name.</param>
/// <param name="Points">The band's points.</param>
/// <param name="Holds">Whether the target was held.</param>
public sealed record Grade(string Name, int Points, bool Holds);
