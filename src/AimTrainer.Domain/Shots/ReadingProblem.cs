namespace AimTrainer.Domain;

/// <summary>One thing that is wrong with a shot's values.</summary>
/// <param name="Field">The value's name, as in <c>docs/shots.md</c>.</param>
/// <param name="Found">What was there.</param>
/// <param name="Allowed">What may be there.</param>
public sealed record ReadingProblem(string Field, string Found, string Allowed)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Field}: found {Found}; allowed: {Allowed}";
}
