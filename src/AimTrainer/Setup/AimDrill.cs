using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>The shipped drill that trains what an aim says is worth most, with the aim's target filled in.</summary>
internal static class AimDrill
{
    /// <summary>The drill for a part: a line trains the angle, one place at the arrows the laydown, the others tell throws apart by speed and revs.</summary>
    public static string IdFor(ScatterPart? part) => part switch
    {
        ScatterPart.Laydown => "narrow-at-arrow",
        ScatterPart.Speed => "set-line-set-speed",
        ScatterPart.Revs => "same-throw",
        _ => "two-point-line",
    };

    /// <summary>The drill's text with the target of the advice, checked as any drill is.</summary>
    /// <param name="advice">The advice, whose line reaches the downlane distance.</param>
    /// <param name="bowler">The bowler.</param>
    /// <param name="arrowsFeet">Where the arrows are.</param>
    /// <param name="downlaneFeet">Where the downlane target is.</param>
    /// <param name="file">The file that is to be written; its name becomes the id.</param>
    public static string Of(AimAdvice advice, AimBowler bowler, double arrowsFeet, double downlaneFeet, string file)
    {
        if (!double.IsFinite(advice.ArrowsBoard) || !double.IsFinite(advice.DownlaneBoard))
        {
            throw new UserException($"{file}: not written: the best line ends in a gutter before its targets");
        }

        var (shipped, id) = (IdFor(advice.Practise), Path.GetFileNameWithoutExtension(file));
        var drill = System.Text.Json.Nodes.JsonNode.Parse(new DrillLibrary(null).Read(shipped).Json)!.AsObject();
        drill.Remove("$schema");
        drill["id"] = id;
        drill["name"] = $"{drill["name"]}: aimed";
        foreach (var block in drill["blocks"]!.AsArray())
        {
            var near = Target("at the arrows", advice.ArrowsBoard, arrowsFeet, 3);
            var far = Target("downlane", advice.DownlaneBoard, downlaneFeet, 5);
            var asLine = shipped is "two-point-line" or "set-line-set-speed";
            var aim = new JsonObject { ["name"] = "aimed line" };
            if (asLine)
            {
                aim["line"] = new JsonArray(near, far);
            }
            else
            {
                aim["board"] = Rounded(advice.ArrowsBoard);
                aim["feet"] = arrowsFeet;
                if (block!["aims"]![0]!["widthBoards"] is { } width)
                {
                    aim["widthBoards"] = width.DeepClone();
                }
            }

            block!["aims"] = new JsonArray(aim);
            if (shipped == "set-line-set-speed")
            {
                block["comparable"]!["expect"] = new JsonObject
                {
                    ["speedMph"] = Math.Round(bowler.SpeedMph, 1),
                    ["speedAt"] = "release",
                    ["revsRpm"] = Math.Round(bowler.RevsRpm),
                    ["launchAngleDegrees"] = Math.Round(advice.Best.Line.LaunchAngleDegrees, 2),
                    ["laydownBoard"] = Rounded(advice.Best.Line.LaydownBoard),
                };
            }
        }

        var text = drill.ToJsonString(new JsonSerializerOptions { WriteIndented = true }) + "\n";
        var read = DrillShelf.Read(file, Encoding.UTF8.GetBytes(text));
        return read.Value is null ? throw UserException.Of(read.Problems) : text;
    }

    private static JsonObject Target(string name, double board, double feet, double width) =>
        new() { ["name"] = name, ["board"] = Rounded(board), ["feet"] = feet, ["widthBoards"] = width };

    private static double Rounded(double board) => Math.Round(Math.Clamp(board, Board.NearEdge.Boards, Board.FarEdge.Boards), 1, MidpointRounding.ToEven);
}
