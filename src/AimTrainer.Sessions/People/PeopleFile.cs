using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What <c>people.json</c> holds.</summary>
public sealed record PeopleFile
{
    /// <summary>Sessions older than so many months are erased, 1 to 240; null keeps them.</summary>
    public int? KeepMonths { get; init; }

    /// <summary>What was agreed with whom.</summary>
    public ValueList<BowlerConsent> Bowlers { get; init; } = [];
}
