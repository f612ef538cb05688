using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Benchmarks;

/// <summary>Drills for measuring: one target, as in the shipped ones, thrown at as often as it takes.</summary>
internal static class Drills
{
    private const string Script = """
        {
          "format": 1,
          "id": "measured",
          "name": "Measured",
          "purpose": "Measures this program.",
          "whoFor": "Whoever builds it.",
          "aboutMinutes": 30,
          "cautions": ["Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery."],
          "blocks": [
            {
              "name": "Block",
              "kind": "training",
              "aims": [{ "name": "second arrow", "mark": "arrow 2", "widthBoards": 3 }],
              "order": { "kind": "serial" },
              "until": { "shots": 40 },
              "sizing": SIZING
            }
          ]
        }
        """;

    public const string Fixed = """{ "kind": "fixed" }""";
    public const string Weighted = """{ "kind": "weighted", "goalHitRate": 0.75, "narrowerOctaves": 0.125 }""";
    public const string Scatter = """{ "kind": "scatter", "goalHitRate": 0.75 }""";

    /// <summary>A drill file whose one block takes more shots than any round sends.</summary>
    public static string LongScript =>
        Script.Replace("SIZING", Fixed, StringComparison.Ordinal).Replace("\"shots\": 40", "\"shots\": 1000000", StringComparison.Ordinal);

    /// <summary>One block of as many shots; the reader of drills would allow fewer.</summary>
    public static DrillScript OneBlock(string sizing, int shots)
    {
        var drill = Source(sizing).Script;
        var block = drill.Blocks[0];
        return drill with { Blocks = [block with { Until = block.Until with { Shots = shots } }] };
    }

    /// <summary>Blocks of forty shots, one after the other.</summary>
    public static DrillSource Blocks(string sizing, int blocks)
    {
        var one = Source(sizing);
        var repeated = Enumerable.Range(1, blocks).Select(number => one.Script.Blocks[0] with { Name = $"Block {number}" });
        return one with { Script = one.Script with { Blocks = repeated.ToValueList() } };
    }

    /// <summary>A session of a drill.</summary>
    public static SessionSetup Setup(DrillSource drill, int station, string id) => new()
    {
        SessionId = id,
        Station = station,
        At = DateTimeOffset.UnixEpoch,
        Bowler = $"Bowler {station}",
        Hand = Hand.Right,
        DrillId = drill.Script.Id,
        DrillHash = drill.Hash,
        Lane = LaneProfileReader.Default,
        Seed = 1,
    };

    private static DrillSource Source(string sizing)
    {
        var json = Script.Replace("SIZING", sizing, StringComparison.Ordinal);
        var bytes = Encoding.UTF8.GetBytes(json);
        var read = DrillReader.Read("measured", bytes);
        return new DrillSource(
            read.Value ?? throw new InvalidOperationException(string.Join("; ", read.Problems)), DrillHash.Of(bytes), json);
    }
}
