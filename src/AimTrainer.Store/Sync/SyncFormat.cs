namespace AimTrainer.Store;

/// <summary>What a center and a chain must agree on before anything is sent.</summary>
public static class SyncFormat
{
    /// <summary>The messages between them. Raised when an older program could not read them.</summary>
    public const int Messages = 1;

    /// <summary>The shape of inputs and events in the log. Raised when an older program could not read them.</summary>
    public const int Events = 1;

    /// <summary>Most sessions that are asked about at once.</summary>
    public const int MostAsked = 1000;

    /// <summary>Most sessions in one delivery.</summary>
    public const int MostSessions = 64;

    /// <summary>Most steps in one delivery.</summary>
    public const int MostSteps = 256;

    /// <summary>Most groups of a center that are told of.</summary>
    public const int MostGroups = 1000;

    /// <summary>Longest delivery, bytes: a step that alone is longer goes alone.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>How a delivery of another format is refused.</summary>
    /// <param name="messages">The sender's <see cref="Messages"/>.</param>
    /// <param name="events">The sender's <see cref="Events"/>.</param>
    /// <param name="sender">Who sends, for the words.</param>
    /// <param name="taker">Who takes, for the words.</param>
    /// <returns>What was found and what to do; null when it can be taken.</returns>
    public static string? WhyNot(int messages, int events, string sender, string taker) =>
        messages == Messages && events is >= 1 and <= Events ? null
        : messages > Messages || events > Events
            ? FormattableString.Invariant($"format: found messages {messages} and events {events} from {sender}; {taker} knows {Messages} and {Events}: bring {taker} up to date first; nothing is lost, {sender} keeps everything until then")
            : FormattableString.Invariant($"format: found messages {messages} and events {events} from {sender}; {taker} takes {Messages} and up to {Events}: bring {sender} up to date");
}
