namespace AimTrainer.Output;

/// <summary>What is said before every session.</summary>
internal static class Cautions
{
    public static IReadOnlyList<string> Always { get; } =
    [
        "nobody walks past the foul line to place or check a target: the lane is oiled and very slippery.",
        "stop when the hand, wrist or arm hurts; this program asks and never tells anyone how much to throw.",
    ];
}
