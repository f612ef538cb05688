using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>What one shot is thrown at: a single target, or a line of two or more at different distances. Every target must be held.</summary>
public sealed record Aim
{
    /// <summary>Makes an aim.</summary>
    /// <param name="name">What the drill calls it.</param>
    /// <param name="targets">One target, or the targets of a line by distance, nearest first.</param>
    /// <exception cref="ArgumentException">No target, or two at one distance or out of order.</exception>
    public Aim(string name, ValueList<NamedTarget> targets)
    {
        if (targets.Count == 0)
        {
            throw new ArgumentException("at least one target is needed", nameof(targets));
        }

        for (var i = 1; i < targets.Count; i++)
        {
            if (targets[i].Target.Distance <= targets[i - 1].Target.Distance)
            {
                throw new ArgumentException("the targets of a line lie at different distances, nearest first", nameof(targets));
            }
        }

        Name = name;
        Targets = targets;
    }

    /// <summary>What the drill calls it.</summary>
    public string Name { get; }

    /// <summary>Its targets, nearest first.</summary>
    public ValueList<NamedTarget> Targets { get; }

    /// <summary>Whether there is more than one target.</summary>
    [JsonIgnore]
    public bool IsLine => Targets.Count > 1;
}
