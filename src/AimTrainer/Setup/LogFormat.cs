namespace AimTrainer.Setup;

/// <summary>How a host writes its log.</summary>
internal enum LogFormat
{
    /// <summary>A line of words for each thing; under systemd with its levels.</summary>
    Text,

    /// <summary>A JSON object for each thing, a line each, for programs that collect logs.</summary>
    Json,
}
