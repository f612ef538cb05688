namespace AimTrainer.Motion;

/// <summary>Which shipped drill trains what an advice says is worth most.</summary>
public static class PractiseDrill
{
    /// <summary>Its id: a line trains the angle, one place at the arrows the laydown, the others tell throws apart by speed and revs.</summary>
    /// <param name="part">What is to be practised; null when nothing stands out.</param>
    public static string IdFor(ScatterPart? part) => part switch
    {
        ScatterPart.Laydown => "narrow-at-arrow",
        ScatterPart.Speed => "set-line-set-speed",
        ScatterPart.Revs => "same-throw",
        _ => "two-point-line",
    };
}
