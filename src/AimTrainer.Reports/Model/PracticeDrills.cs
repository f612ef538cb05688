namespace AimTrainer.Reports;

/// <summary>The drill for each rule. A test holds ids and names against the drills that come with the program.</summary>
internal static class PracticeDrills
{
    /// <summary>Id and name of the drill.</summary>
    /// <param name="rule">The rule that applies.</param>
    /// <param name="atTheArrows">Whether it is about a target at the arrows.</param>
    public static (string Id, string Name) For(WorkOnRule rule, bool atTheArrows) => rule switch
    {
        WorkOnRule.Measure => ("ten-shot-spread", "Ten-shot spread"),
        WorkOnRule.Lean => atTheArrows ? ("three-rings", "Three rings") : ("two-point-line", "Two-point line"),
        WorkOnRule.Laydown => ("straight-three", "Straight three"),
        WorkOnRule.Angle => ("two-point-line", "Two-point line"),
        WorkOnRule.Ball => ("same-throw", "Same throw"),
        WorkOnRule.Grew => ("fitted-target", "Fitted target"),
        WorkOnRule.Test => ("session-start-test", "Session-start test"),
        WorkOnRule.Narrow => atTheArrows ? ("narrow-at-arrow", "Narrowing at one arrow") : ("narrow-downlane", "Narrowing downlane"),
        _ => throw new ArgumentOutOfRangeException(nameof(rule)),
    };
}
