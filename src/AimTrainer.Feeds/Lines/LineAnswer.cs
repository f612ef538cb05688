using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>What is answered to a line; the shapes are in <c>docs/feeds.md</c>.</summary>
internal static class LineAnswer
{
    public static byte[] Welcome(int station, string? session) => Write(json =>
    {
        json.WriteString("answer"u8, "welcome"u8);
        json.WriteNumber("station"u8, station);
        json.WriteString("session"u8, session);
    });

    public static byte[] Beat(string? session) => Write(json =>
    {
        json.WriteString("answer"u8, "beat"u8);
        json.WriteString("session"u8, session);
    });

    /// <param name="again">Whether it came before.</param>
    /// <param name="id">The shot's id.</param>
    /// <param name="session">The session that holds it.</param>
    /// <param name="entry">The step that holds it.</param>
    public static byte[] Kept(bool again, string id, string session, LogEntry entry)
    {
        var graded = entry.Events.AsEnumerable().OfType<SessionEvent.ShotGraded>().FirstOrDefault();
        var aside = entry.Events.AsEnumerable().OfType<SessionEvent.ShotSetAside>().FirstOrDefault();
        return Write(json =>
        {
            json.WriteString("answer"u8, again ? "again"u8 : "kept"u8);
            json.WriteString("id"u8, id);
            json.WriteString("session"u8, session);
            json.WriteNumber("sequence"u8, entry.Sequence);
            if (graded is not null)
            {
                json.WriteNumber("number"u8, graded.Shot.Number);
            }

            if (aside is not null)
            {
                json.WriteString("setAside"u8, aside.Why);
            }
        });
    }

    /// <param name="id">The shot's id, as far as it could be read.</param>
    /// <param name="why">What was found and what to do.</param>
    /// <param name="sendAgain">Whether the same line may be kept later.</param>
    public static byte[] Refused(string? id, string why, bool sendAgain = false) => Write(json =>
    {
        json.WriteString("answer"u8, "refused"u8);
        json.WriteString("id"u8, id);
        json.WriteString("why"u8, why);
        json.WriteBoolean("sendAgain"u8, sendAgain);
    });

    private static byte[] Write(Action<Utf8JsonWriter> members)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }
}
