using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What was erased. It names nobody: it is what the audit keeps.</summary>
/// <param name="Id">Of this erasure.</param>
/// <param name="At">When.</param>
/// <param name="Sessions">The ids of the sessions that are gone: what other copies of the record are told.</param>
/// <param name="CopiesLeft">Files in the data folder that may still hold it: older copies of the record.</param>
public sealed record Erased(string Id, DateTimeOffset At, ValueList<string> Sessions, ValueList<string> CopiesLeft);
