using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Why marks give no map, and what to do.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Marks">The marks it is about, by their place in the list, from 0; empty when it is about all of them.</param>
/// <param name="Found">What was found, in words.</param>
/// <param name="ToDo">What to do, in words.</param>
public sealed record FitRefusal(FitRefusalReason Reason, ValueList<int> Marks, string Found, string ToDo)
{
    /// <summary>Both in one line.</summary>
    public override string ToString() => $"{Found}. {ToDo}";
}
