using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>Reads an action that came from elsewhere.</summary>
internal static class CalibrationActionJson
{
    private const string Allowed = "allowed: an action as {\"kind\":\"set\"} or {\"kind\":\"nudge\",\"direction\":\"left\",\"step\":\"fine\"} (docs/calibration.md lists them)";

    // Stricter than the domain's own records: a nudge without a direction must not go left.
    private static readonly JsonSerializerOptions Options = new(DomainJson.Options) { RespectRequiredConstructorParameters = true };

    /// <summary>The action, or what was found and what is allowed.</summary>
    public static (PlacingAction? Action, string Problem) Read(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > CalibrationAnswer.LongestAction)
        {
            return (null, $"found {json.Length} characters; {Allowed}, at most {CalibrationAnswer.LongestAction} characters");
        }

        try
        {
            return JsonSerializer.Deserialize<PlacingAction>(json, Options) is { } action ? (action, "") : (null, $"found null; {Allowed}");
        }
        catch (Exception exception) when (exception is JsonException or NotSupportedException)
        {
            // A kind that is missing is told by the serializer as something it does not support.
            var path = exception is JsonException { Path: { Length: > 0 } where } ? $"{where}: " : "";
            return (null, $"{path}found {FoundText.Quoted(json)}; {Allowed}");
        }
    }
}
