namespace AimTrainer.Output;

/// <summary>What is said before every session; a drill that says the same in the same words is not said twice.</summary>
internal static class Cautions
{
    public const string DryTowel = "Wipe the ball with a dry towel; no liquids during play.";

    public static IReadOnlyList<string> Always { get; } =
    [
        "Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery.",
        "Stop when the hand, wrist or arm hurts; this program asks and never tells anyone how much to throw.",
    ];
}
