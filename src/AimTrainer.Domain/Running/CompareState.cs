using System.Collections.Immutable;

namespace AimTrainer.Domain;

/// <summary>Where a comparison stands.</summary>
/// <param name="Line">The aim that is thrown at, from 0.</param>
/// <param name="Position">The place in the order of throwing at this aim, from 0.</param>
/// <param name="SinceCheck">Shots since the reference ball's last check.</param>
/// <param name="Cells">What each ball has thrown at each aim, aim by aim.</param>
internal sealed record CompareState(int Line, int Position, int SinceCheck, ImmutableArray<CompareCell> Cells);
