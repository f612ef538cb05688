namespace AimTrainer.Web;

/// <summary>A station's newest picture, written once for all who look at it.</summary>
/// <param name="Number">Counts the pictures of the station in this process, from 1.</param>
/// <param name="Coach">JSON (UTF-8) of the coach's view.</param>
/// <param name="Bowler">JSON (UTF-8) of the bowler's view.</param>
public sealed record LivePicture(long Number, ReadOnlyMemory<byte> Coach, ReadOnlyMemory<byte> Bowler)
{
    /// <summary>When it was made, as the host's clock stamps it; for measuring.</summary>
    internal long MadeAt { get; init; }
}
