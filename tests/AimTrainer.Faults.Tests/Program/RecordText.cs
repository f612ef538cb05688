using System.Text.Json;
using System.Text.Json.Nodes;

namespace AimTrainer.Faults.Tests;

/// <summary>The program's JSON, made comparable between two runs of the same shots.</summary>
internal static class RecordText
{
    /// <summary>A stored session without what differs between two runs: its id, its place, and when shots arrived.</summary>
    public static string Comparable(string sessionJson)
    {
        var session = JsonNode.Parse(sessionJson)!.AsObject();
        session.Remove("session");
        session.Remove("startedAt");
        session.Remove("recordIn");
        return WithoutTimes(session);
    }

    public static JsonNode? TryParse(string json)
    {
        try
        {
            return JsonNode.Parse(json);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The same without every <c>at</c> that is a time (of a speed it is a place).</summary>
    public static string WithoutTimes(JsonNode node)
    {
        Strip(node);
        return node.ToJsonString();
    }

    private static void Strip(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject whole:
                if (whole["at"] is JsonValue at && at.TryGetValue<DateTimeOffset>(out _))
                {
                    whole.Remove("at");
                }

                foreach (var (_, part) in whole)
                {
                    Strip(part);
                }

                break;
            case JsonArray list:
                foreach (var part in list)
                {
                    Strip(part);
                }

                break;
            default:
                break;
        }
    }
}
