using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>An advice with what is said beside it.</summary>
/// <param name="Advice">The advice.</param>
/// <param name="Bowler">The bowler.</param>
/// <param name="Source">Where the scatter is from.</param>
/// <param name="Settings">How it was worked out.</param>
/// <param name="ArrowsFeet">Where the arrows are.</param>
/// <param name="LaneFitted">Whether the lane's uncertainty is in it.</param>
/// <param name="DrillId">The shipped drill that trains what is worth most.</param>
/// <param name="DrillFile">Where it was written with its target; null when nowhere.</param>
internal sealed record AimView(
    AimAdvice Advice, AimBowler Bowler, string Source, AimSettings Settings, double ArrowsFeet, bool LaneFitted, string DrillId, string? DrillFile);
