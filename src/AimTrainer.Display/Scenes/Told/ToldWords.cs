using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What was told of a shot, in words.</summary>
internal static class ToldWords
{
    /// <summary>"1.30 left", "hit, left", "miss": of a line what is told of each target, the nearest first.</summary>
    public static string Short(ToldShot told, Hand hand)
    {
        var parts = told.Targets.AsEnumerable().Select(target => Of(target, hand)).OfType<string>().ToList();
        var held = told.Held switch { true => "hit", false => "miss", null => "not measured" };
        return parts.Count == 0 ? held : $"{held}, {string.Join(", ", parts)}";
    }

    private static string? Of(ToldTarget told, Hand hand) => told switch
    {
        { Miss: { } miss } => SceneWords.Miss(miss, hand),
        { Side: 0 } => "on centre",
        { Side: { } side } => SceneWords.Side(side, hand),
        _ => null,
    };
}
