using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>What one heading of another program's file means.</summary>
/// <param name="Heading">Its heading, found without regard to case.</param>
/// <param name="Is">Our column.</param>
/// <param name="Unit">The unit of its numbers.</param>
/// <param name="Feet">For <see cref="ShotColumn.BoardAt"/> its distance, 0 to 60 ft; else 0.</param>
/// <param name="Negate">Whether its numbers have the other sign (angles only).</param>
/// <param name="SpeedAt">For <see cref="ShotColumn.SpeedMph"/> where the speed is measured, when every row has the same place.</param>
public sealed record MappedColumn(
    string Heading, ShotColumn Is, MappedUnit Unit = MappedUnit.Ours, double Feet = 0, bool Negate = false, SpeedPlace? SpeedAt = null);
