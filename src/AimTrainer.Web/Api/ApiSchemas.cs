using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Reports;
using AimTrainer.Sessions;
using Microsoft.OpenApi;
using JsonNode = System.Text.Json.Nodes.JsonNode;

namespace AimTrainer.Web;

/// <summary>
/// The schemas of what is taken and given. What is given is worked out from the very types that are written; what is taken is read by
/// hand, so its schemas are written by hand (<c>schemas.json</c>), and the tests hold both against what is really sent.
/// </summary>
internal static class ApiSchemas
{
    private static readonly string[] Resources = ["api/schemas.json", "api/plan-schemas.json"];

    private const int DeepestType = 64;

    private static readonly (string Name, Type Type)[] Given =
    [
        ("Station", typeof(StationView)), ("Stations", typeof(ValueList<StationView>)), (nameof(ShotAnswer), typeof(ShotAnswer)), (nameof(ActionAnswer), typeof(ActionAnswer)),
        (nameof(SessionStarted), typeof(SessionStarted)), ("Sessions", typeof(ValueList<SessionListing>)), ("Drills", typeof(ValueList<DrillListed>)),
        (nameof(DrillSummary), typeof(DrillSummary)), (nameof(DrillChecked), typeof(DrillChecked)), ("Bowlers", typeof(ValueList<BowlerListing>)),
        ("Bowler", typeof(BowlerRecord)), (nameof(AccessAnswer), typeof(AccessAnswer)), (nameof(PairingCode), typeof(PairingCode)), ("Pairings", typeof(ValueList<Pairing>)),
        (nameof(ProjectorLetIn), typeof(ProjectorLetIn)), ("Projectors", typeof(ValueList<ProjectorListed>)),
        (nameof(SessionFigures), typeof(SessionFigures)), (nameof(BowlerFigures), typeof(BowlerFigures)), (nameof(BowlerTrend), typeof(BowlerTrend)),
        ("Balls", typeof(ValueList<BallRecord>)), ("BallRecord", typeof(BallRecord)),
        ("Feeds", typeof(ValueList<FeedListed>)), (nameof(FeedTokenMade), typeof(FeedTokenMade)), (nameof(Done), typeof(Done)),
        (nameof(LaneMap), typeof(LaneMap)), (nameof(LaneChecked), typeof(LaneChecked)), (nameof(PathAnswer), typeof(PathAnswer)), (nameof(LineAnswer), typeof(LineAnswer)),
        (nameof(ScatterFound), typeof(ScatterFound)), (nameof(SessionCrossings), typeof(SessionCrossings)),
        ("Comparison", typeof(BallsReport)),
        ("Displays", typeof(ValueList<DisplayListed>)), (nameof(DisplayTokenMade), typeof(DisplayTokenMade)), (nameof(ProjectionState), typeof(ProjectionState)),
        ("Programs", typeof(ValueList<ProgramListed>)), ("Groups", typeof(ValueList<BowlerGroup>)), (nameof(GroupMade), typeof(GroupMade)), ("MembersStarted", typeof(ValueList<MemberStarted>)),
        ("Needs", typeof(ValueList<LaneNeed>)), (nameof(Erased), typeof(Erased)),
    ];

    private static readonly Type[] Units = [typeof(Board), typeof(BoardOffset), typeof(Feet), typeof(Inches), typeof(Degrees), typeof(MilesPerHour), typeof(Rpm)];

    /// <summary>All of them, by name, as JSON Schema 2020-12.</summary>
    public static JsonObject All()
    {
        var all = new JsonObject(Resources.SelectMany(ByHand));
        foreach (var (name, type) in Given)
        {
            all[name] = Of(type);
        }

        return all;
    }

    private static IEnumerable<KeyValuePair<string, JsonNode?>> ByHand(string resource)
    {
        using var stream = typeof(ApiSchemas).Assembly.GetManifestResourceStream(resource)!;
        return [.. JsonNode.Parse(stream)!.AsObject().Select(one => KeyValuePair.Create(one.Key, one.Value?.DeepClone()))];
    }

    /// <summary>The same for a description.</summary>
    public static IDictionary<string, IOpenApiSchema> Parse()
    {
        var document = new JsonObject
        {
            ["openapi"] = "3.1.1",
            ["info"] = new JsonObject { ["title"] = "schemas", ["version"] = "1" },
            ["paths"] = new JsonObject(),
            ["components"] = new JsonObject { ["schemas"] = All() },
        };
        return OpenApiDocument.Parse(document.ToJsonString(), OpenApiConstants.Json).Document!.Components!.Schemas!;
    }

    private static JsonNode Of(Type type)
    {
        var root = WebJson.Options.GetJsonSchemaAsNode(type, new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Transform });
        return Whole(root, root, 0);
    }

    /// <summary>The exporter points back to a type that it has written before; in a description that pointer would start at the wrong root. So it is written out.</summary>
    private static JsonNode Whole(JsonNode root, JsonNode node, int depth)
    {
        if (depth > DeepestType)
        {
            throw new InvalidOperationException("a type of an answer holds itself: it needs a schema of its own name");
        }

        switch (node)
        {
            case JsonObject withPointer when withPointer["$ref"]?.GetValue<string>() is { } pointer:
                var target = pointer.Split('/').Skip(1).Aggregate(root, (at, step) => at is JsonArray list ? list[int.Parse(step, CultureInfo.InvariantCulture)]! : at[step]!);
                return Whole(root, target, depth + 1);
            case JsonObject members:
                return new JsonObject(members.Select(member => KeyValuePair.Create(member.Key, member.Value is { } value ? Whole(root, value, depth + 1) : null)));
            case JsonArray items:
                return new JsonArray([.. items.Select(item => item is null ? null : Whole(root, item, depth + 1))]);
            default:
                return node.DeepClone();
        }
    }

    /// <summary>What is written by a converter of ours the exporter cannot see into: units are numbers, value lists are lists.</summary>
    private static JsonNode Transform(JsonSchemaExporterContext context, JsonNode schema)
    {
        var type = Nullable.GetUnderlyingType(context.TypeInfo.Type) ?? context.TypeInfo.Type;
        var isNullable = type != context.TypeInfo.Type || IsNullable(context.PropertyInfo);
        if (Array.IndexOf(Units, type) >= 0)
        {
            return new JsonObject { ["type"] = isNullable ? new JsonArray("number", "null") : "number" };
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ValueList<>))
        {
            return new JsonObject { ["type"] = "array", ["items"] = Of(type.GetGenericArguments()[0]) };
        }

        return schema;
    }

    private static bool IsNullable(System.Text.Json.Serialization.Metadata.JsonPropertyInfo? property) => property is { IsGetNullable: true };
}
