using System.Globalization;

namespace AimTrainer.Faults.Tests;

/// <summary>A drill whose state after each shot rests on all shots before it: chance, a walk, a line, and three ways of sizing.</summary>
internal static class MixedDrill
{
    private const string Script = """
        {
          "format": 1,
          "id": "mixed-for-faults",
          "name": "Mixed for faults",
          "purpose": "Gives a session much to remember.",
          "whoFor": "Tests of this program.",
          "aboutMinutes": 30,
          "cautions": ["Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery."],
          "blocks": [
            {
              "name": "By chance",
              "kind": "training",
              "aims": [
                { "name": "eight", "board": 8, "feet": 15, "widthBoards": 4 },
                { "name": "ten", "board": 10, "feet": 15, "widthBoards": 4 },
                { "name": "twelve", "board": 12, "feet": 15, "widthBoards": 4 }
              ],
              "order": { "kind": "random", "longestRun": 2 },
              "until": { "shots": SHOTS },
              "sizing": { "kind": "staircase", "hits": 2, "misses": 1, "stepFactor": 1.25, "reversals": 4 }
            },
            {
              "name": "Walking",
              "kind": "training",
              "aims": [{ "name": "walking", "mark": "arrow 1", "plusBoards": 3, "widthBoards": 4 }],
              "order": { "kind": "walk", "to": { "board": 14 }, "moveBoards": 2, "afterHolds": 2, "atEnd": "turn" },
              "until": { "shots": SHOTS },
              "sizing": { "kind": "scatter", "goalHitRate": 0.75 }
            },
            {
              "name": "On a line",
              "kind": "training",
              "aims": [
                {
                  "name": "ten to seven",
                  "line": [
                    { "name": "ten", "board": 10, "feet": 15, "widthBoards": 4 },
                    { "name": "seven", "board": 7, "feet": 40, "widthBoards": 5 }
                  ]
                }
              ],
              "order": { "kind": "serial" },
              "until": { "shots": SHOTS },
              "sizing": { "kind": "weighted", "goalHitRate": 0.75, "narrowerOctaves": 0.125 }
            },
            {
              "name": "Test",
              "kind": "test",
              "aims": [{ "name": "ten", "board": 10, "feet": 15, "widthBoards": 3 }],
              "order": { "kind": "serial" },
              "until": { "shots": SHOTS }
            }
          ]
        }
        """;

    private const int Blocks = 4;

    /// <summary>Writes the drill.</summary>
    /// <param name="file">Where to.</param>
    /// <param name="shots">About how many shots it takes; made a multiple of four.</param>
    /// <returns>How many it takes.</returns>
    public static int Write(string file, int shots)
    {
        var each = (shots + Blocks - 1) / Blocks;
        File.WriteAllText(file, Script.Replace("SHOTS", each.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal));
        return each * Blocks;
    }
}
