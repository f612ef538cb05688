using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A shipped drill with a line of somebody's own as its target.</summary>
public static class AimedDrill
{
    private const double ArrowsWidth = 3, DownlaneWidth = 5;

    private static readonly JsonSerializerOptions _indented = new() { WriteIndented = true };

    /// <summary>The drill, read and checked as any drill is.</summary>
    /// <param name="shipped">The shipped drill: one whose aims are lines gets this line, any other the place at the arrows.</param>
    /// <param name="id">The new drill's id.</param>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="line">The line.</param>
    public static FileRead<DrillSource> Of(DrillSource shipped, string id, string fileName, AimedLine line)
    {
        var drill = System.Text.Json.Nodes.JsonNode.Parse(shipped.Json)!.AsObject();
        drill.Remove("$schema");
        var asLine = false;
        foreach (var block in drill["blocks"]!.AsArray())
        {
            asLine |= Aim(block!.AsObject(), line);
        }

        var places = asLine ? $"{Place(line.Arrows)} to {Place(line.Downlane)}" : Place(line.Arrows);
        drill["id"] = id;
        drill["name"] = $"{shipped.Script.Name}, {places}";
        drill["purpose"] = $"Trains a planned line: {places} (board@feet). Made from the drill \"{shipped.Script.Name}\".";
        return DrillShelf.Read(fileName, Encoding.UTF8.GetBytes(drill.ToJsonString(_indented) + "\n"));
    }

    /// <summary>An id for such a drill: the same line and drill have the same one.</summary>
    /// <param name="shippedId">The shipped drill.</param>
    /// <param name="line">The line.</param>
    public static string IdFor(string shippedId, AimedLine line) =>
        $"{shippedId}-{Place(line.Arrows)}-{Place(line.Downlane)}".Replace("@", "-at-", StringComparison.Ordinal).Replace('.', '-');

    private static bool Aim(JsonObject block, AimedLine line)
    {
        var shippedAim = block["aims"]![0]!;
        var asLine = shippedAim["line"] is not null;
        var aim = new JsonObject { ["name"] = "planned line" };
        if (asLine)
        {
            aim["line"] = new JsonArray(Target("at the arrows", line.Arrows, ArrowsWidth), Target("downlane", line.Downlane, DownlaneWidth));
        }
        else
        {
            aim["board"] = Rounded(line.Arrows.Board);
            aim["feet"] = line.Arrows.Distance.Value;
            if (shippedAim["widthBoards"] is { } width)
            {
                aim["widthBoards"] = width.DeepClone();
            }
        }

        block["name"] = $"On the line {Place(line.Arrows)}";
        block["aims"] = new JsonArray(aim);
        if (block["comparable"] is JsonObject comparable && comparable["expect"] is not null)
        {
            comparable["expect"] = Expected(comparable, line.Expected);
        }

        return asLine;
    }

    /// <summary>The planned throw, where the drill limits how far a throw may differ from it.</summary>
    private static JsonObject Expected(JsonObject comparable, Baseline throws)
    {
        var expect = new JsonObject();
        if (throws.Speed is { } speed && comparable["speedWithinMph"] is not null)
        {
            expect["speedMph"] = Math.Round(speed.Value.Value, 1);
            expect["speedAt"] = JsonNamingPolicy.CamelCase.ConvertName(speed.Place.ToString());
        }

        if (throws.Revs is { } revs && comparable["revsWithinRpm"] is not null)
        {
            expect["revsRpm"] = Math.Round(revs.Value);
        }

        if (throws.LaunchAngle is { } angle && comparable["launchAngleWithinDegrees"] is not null)
        {
            expect["launchAngleDegrees"] = Math.Round(angle.Value, 2);
        }

        if (throws.Laydown is { } laydown && comparable["laydownWithinBoards"] is not null)
        {
            expect["laydownBoard"] = Rounded(laydown);
        }

        return expect;
    }

    private static JsonObject Target(string name, Crossing at, double width) =>
        new() { ["name"] = name, ["board"] = Rounded(at.Board), ["feet"] = at.Distance.Value, ["widthBoards"] = width };

    private static string Place(Crossing at) => string.Create(CultureInfo.InvariantCulture, $"{Rounded(at.Board):0.#}@{at.Distance.Value:0.#}");

    private static double Rounded(Board board) => Math.Round(Math.Clamp(board.Boards, Board.NearEdge.Boards, Board.FarEdge.Boards), 1, MidpointRounding.ToEven);
}
