using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>An advice with what is said beside it.</summary>
/// <param name="Advice">The advice.</param>
/// <param name="Bowler">The bowler.</param>
/// <param name="Source">Where the scatter is from.</param>
/// <param name="Settings">How it was worked out.</param>
/// <param name="ArrowsFeet">Where the arrows are.</param>
/// <param name="LaneFitted">Whether the lane's uncertainty is in it.</param>
/// <param name="DrillFile">Where the drill was written with its target; null when nowhere.</param>
internal sealed record AimView(AimAdvice Advice, AimBowler Bowler, string Source, AimSettings Settings, double ArrowsFeet, bool LaneFitted, string? DrillFile)
{
    /// <summary>The shipped drill that trains what is worth most.</summary>
    public string DrillId => PractiseDrill.IdFor(Advice.Practise);
}
