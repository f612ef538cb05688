using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What a voice says of what the bowler is told: numbers of boards and sides, and words of our own, never a name from a file.</summary>
public static class SpokenWords
{
    /// <summary>
    /// "1.5 left", for a line "1.5 left, 0.2 right"; "4 of 5 held" for several shots; "not measured". Null when no number is told:
    /// the cue says it all.
    /// </summary>
    /// <param name="told">What the bowler is told.</param>
    /// <param name="hand">The bowler's hand.</param>
    public static string? For(Told told, Hand hand)
    {
        if (told.Results.Count > 1)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{told.Results.AsEnumerable().Count(shot => shot.Held == true)} of {told.Results.Count} held");
        }

        if (told.Results.Count == 0)
        {
            return null;
        }

        var shot = told.Results[0];
        var misses = shot.Targets.AsEnumerable().Where(target => target.Miss is not null).Select(target => Boards(target.Miss!.Value, hand)).ToList();
        return misses.Count > 0 ? string.Join(", ", misses) : shot.Held is null ? "not measured" : null;
    }

    private static string Boards(BoardOffset miss, Hand hand)
    {
        var size = Math.Round(miss.Abs().ExactBoards, 1, MidpointRounding.ToEven);
        var side = miss > BoardOffset.Zero == (hand == Hand.Right) ? "left" : "right";
        return size == 0 ? "centre" : string.Create(CultureInfo.InvariantCulture, $"{size:0.#} {side}");
    }
}
