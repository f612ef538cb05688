using System.Globalization;
using System.Text;
using System.Text.Json;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace AimTrainer.Web;

/// <summary>
/// The steps of a session as server-sent events: event <c>step</c>, its id is the step's sequence, every step in order and none left
/// out. Read from the store, so that a reader who comes back gets exactly what it missed; ends when the session is over.
/// </summary>
internal sealed class LogStream(string sessionId, long after, ISessionStore store, LiveStation? live, TimeProvider clock) : IResult
{
    private static readonly byte[] Beat = "event: beat\ndata: {}\n\n"u8.ToArray();

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var left = httpContext.RequestAborted;
        response.ContentType = "text/event-stream";
        response.Headers.CacheControl = "no-cache, no-transform";
        httpContext.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        var last = after;
        var picture = 0L;
        try
        {
            while (true)
            {
                // The picture is looked at before the log: a step that is kept in between wakes this reader again.
                picture = live?.Picture.Number ?? 0;
                await foreach (var entry in store.ReadLogAsync(sessionId, last, left).ConfigureAwait(false))
                {
                    last = entry.Sequence;
                    var head = string.Create(CultureInfo.InvariantCulture, $"event: step\nid: {last}\ndata: ");
                    await response.WriteAsync(head + JsonSerializer.Serialize(entry, WebJson.Options) + "\n\n", Encoding.UTF8, left).ConfigureAwait(false);
                }

                await response.Body.FlushAsync(left).ConfigureAwait(false);
                if (live is null || live.Station.Snapshot.Setup?.SessionId != sessionId)
                {
                    return;
                }

                while (await live.NextAsync(picture, LiveStream.BeatEvery, clock, left).ConfigureAwait(false) is null)
                {
                    await response.BodyWriter.WriteAsync(Beat, left).ConfigureAwait(false);
                }
            }
        }
        catch (OperationCanceledException) when (left.IsCancellationRequested)
        {
            // The reader left.
        }
    }
}
