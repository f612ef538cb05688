using System.Net;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Who is told of what happens on the line feed; nothing that it is told holds a token.</summary>
/// <param name="Kept">A shot was kept: the station, the step, where it came from.</param>
/// <param name="Notice">Somebody came, left, was not let in or was cut off.</param>
public sealed record LineFeedEvents(Action<int, LogEntry, EndPoint> Kept, Action<string> Notice)
{
    /// <summary>Tells nobody.</summary>
    public static LineFeedEvents None { get; } = new((_, _, _) => { }, _ => { });
}
