using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A session as it stands after all corrections: for showing and exporting.</summary>
/// <param name="Blocks">Its blocks in the order in which they were thrown.</param>
/// <param name="SetAside">Shots that came when none counted.</param>
/// <param name="Notes">Notes, in order.</param>
/// <param name="EndedWhy">Why it ended; null while it has not.</param>
public sealed record SessionRecord(ValueList<BlockRecord> Blocks, ValueList<Shot> SetAside, ValueList<string> Notes, string? EndedWhy);
