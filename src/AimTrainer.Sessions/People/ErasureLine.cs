using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A line of <c>erasures.jsonl</c>.</summary>
/// <param name="Kind">What it says.</param>
/// <param name="Id">Of which erasure.</param>
/// <param name="At">When.</param>
/// <param name="Sessions">The sessions that go, with <see cref="ErasureLineKind.Erased"/>; null with the others.</param>
internal sealed record ErasureLine(ErasureLineKind? Kind, string? Id, DateTimeOffset? At, ValueList<string>? Sessions);
