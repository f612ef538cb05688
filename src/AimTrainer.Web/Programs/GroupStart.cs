using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What a group is to throw now.</summary>
/// <param name="Drill">The drill's id.</param>
/// <param name="Absent">Members who are not here.</param>
internal sealed record GroupStart(string Drill, ValueList<string> Absent);
