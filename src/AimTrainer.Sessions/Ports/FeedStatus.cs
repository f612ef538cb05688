using System.Text.Json.Serialization;

namespace AimTrainer.Sessions;

/// <summary>How a station's line feed stands, at one moment.</summary>
/// <param name="State">Its state.</param>
/// <param name="LastLineAge">How long ago the last line came, seconds, to a tenth; null when none came since the program started. It stays when the feed leaves.</param>
/// <param name="Connections">How many are connected.</param>
/// <param name="Kept">Lines that became a shot since the program started.</param>
/// <param name="Refused">Lines that were refused since the program started.</param>
public sealed record FeedStatus(
    FeedState State, [property: JsonPropertyName("lastLineAgeSeconds")] double? LastLineAge, int Connections, long Kept, long Refused);
