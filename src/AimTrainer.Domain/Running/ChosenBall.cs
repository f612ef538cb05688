namespace AimTrainer.Domain;

/// <summary>A ball that was chosen for a role of a comparison.</summary>
/// <param name="Role">The role in the drill.</param>
/// <param name="Name">The ball, as the bowler calls it.</param>
public sealed record ChosenBall(string Role, string Name)
{
    /// <summary>The role of the ball that the others are held against; the same word in every drill.</summary>
    public const string ReferenceRole = "reference";
}
