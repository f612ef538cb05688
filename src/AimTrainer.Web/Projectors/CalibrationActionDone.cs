namespace AimTrainer.Web;

/// <summary>What came of an action that was sent to a calibration.</summary>
/// <param name="Number">The action's number on its line.</param>
/// <param name="Understood">Whether it was an action.</param>
/// <param name="Problem">What was found and what is allowed, when it was not; else empty.</param>
internal sealed record CalibrationActionDone(long Number, bool Understood, string Problem);
