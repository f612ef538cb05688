namespace AimTrainer.Sessions;

/// <summary>What came of an action that was sent to a calibration.</summary>
/// <param name="Understood">Whether it was an action. One that makes no sense now is understood: the state says why it changed nothing.</param>
/// <param name="Problem">What was found and what is allowed, when it was not understood; else empty.</param>
/// <param name="StateJson">The state after it.</param>
public sealed record CalibrationAnswer(bool Understood, string Problem, string StateJson)
{
    /// <summary>Most characters of an action.</summary>
    public const int LongestAction = 1000;
}
