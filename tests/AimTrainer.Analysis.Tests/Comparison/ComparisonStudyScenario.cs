namespace AimTrainer.Analysis.Tests;

/// <summary>An invented way of comparing two balls.</summary>
/// <param name="Name">For tables.</param>
/// <param name="ThrowsEach">Throws of each ball.</param>
/// <param name="Grip">How the second ball grips; the reference ball has 1.</param>
/// <param name="FasterMph">How much faster the bowler throws the second ball.</param>
/// <param name="WearAThrow">Share of the oil that a throw takes along its track.</param>
/// <param name="GrossShare">Share of throws that are slips or misread.</param>
/// <param name="InBlocks">All throws of the reference ball first; else in turn.</param>
internal sealed record ComparisonStudyScenario(
    string Name, int ThrowsEach, double Grip, double FasterMph = 0, double WearAThrow = 0, double GrossShare = 0, bool InBlocks = false);
