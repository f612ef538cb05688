using System.Text.Json;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// The steps of a session: event <c>step</c>, its id is the step's sequence, every step in order and none left out. Read from the
/// store, so that a reader who comes back gets exactly what it missed; ends when the session is no longer its station's.
/// </summary>
internal sealed class LogStream(string sessionId, long after, ISessionStore store, LiveStation? live, TimeProvider clock) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext) => EventStream.RunAsync(httpContext, async (stream, left) =>
    {
        var last = after;
        while (stream.Holds)
        {
            // The picture is looked at before the log: a step that is kept in between wakes this reader again.
            var picture = live?.Picture.Number ?? 0;
            await foreach (var entry in store.ReadLogAsync(sessionId, last, left).ConfigureAwait(false))
            {
                last = entry.Sequence;
                await stream.SendAsync("step", last, JsonSerializer.SerializeToUtf8Bytes(entry, WebJson.Options), left).ConfigureAwait(false);
            }

            if (live is null || live.Station.Snapshot.Setup?.SessionId != sessionId)
            {
                return;
            }

            while (stream.Holds && await live.NextAsync(picture, EventStream.BeatEvery, clock, left).ConfigureAwait(false) is null)
            {
                await stream.BeatAsync(left).ConfigureAwait(false);
            }
        }
    });
}
