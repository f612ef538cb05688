using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A bowler's practice in a period, with the hand of the newest session: boards of the other hand count from the other edge.</summary>
/// <param name="Bowler">As it was first written.</param>
/// <param name="Hand">The hand.</param>
/// <param name="Simulated">Whether all of it is simulated: only where there is no real session.</param>
/// <param name="Sessions">The sessions, oldest first.</param>
/// <param name="Blocks">What they add up to, oldest first; shots that count only.</param>
/// <param name="OtherHandSessions">Sessions of the period with the other hand, which are not in it.</param>
/// <param name="CutOff">Whether older practice of the period was left out, because there is more than <see cref="PracticeLimits"/> allows.</param>
public sealed record BowlerPractice(
    string Bowler,
    Hand Hand,
    bool Simulated,
    ValueList<PracticeSession> Sessions,
    ValueList<PracticeBlock> Blocks,
    int OtherHandSessions,
    bool CutOff);
