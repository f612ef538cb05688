using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What a group is to throw now.</summary>
/// <param name="Drill">The drill's id.</param>
/// <param name="Absent">Members who are not here.</param>
/// <param name="Balls">The balls of a comparison; who has none here compares those of the last time.</param>
internal sealed record GroupStart(string Drill, ValueList<string> Absent, ValueList<MemberBall> Balls);
