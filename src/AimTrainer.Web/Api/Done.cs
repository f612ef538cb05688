namespace AimTrainer.Web;

/// <summary>Something that was done and has nothing more to say.</summary>
/// <param name="Is">Always true.</param>
public sealed record Done([property: System.Text.Json.Serialization.JsonPropertyName("done")] bool Is)
{
    internal static Done It { get; } = new(true);
}
