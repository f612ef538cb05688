using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace AimTrainer.Web;

/// <summary>
/// A station's pictures as server-sent events (HTML standard, section 9.2): event <c>picture</c> with the whole state, the newest at
/// once; a slow reader skips those between. When nothing is new a <c>beat</c> says that the line still holds.
/// </summary>
internal sealed class LiveStream(LiveStation live, bool forBowler, TimeProvider clock) : IResult
{
    /// <summary>How long nothing may come before a beat is sent.</summary>
    public static readonly TimeSpan BeatEvery = TimeSpan.FromSeconds(5);

    private static readonly byte[] Beat = "event: beat\ndata: {}\n\n"u8.ToArray();
    private static readonly byte[] End = "\n\n"u8.ToArray();

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.ContentType = "text/event-stream";
        response.Headers.CacheControl = "no-cache, no-transform";
        httpContext.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        var sent = 0L;
        try
        {
            while (!httpContext.RequestAborted.IsCancellationRequested)
            {
                if (await live.NextAsync(sent, BeatEvery, clock, httpContext.RequestAborted).ConfigureAwait(false) is { } picture)
                {
                    sent = picture.Number;
                    var head = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"event: picture\nid: {picture.Number}\ndata: "));
                    await response.BodyWriter.WriteAsync(head, httpContext.RequestAborted).ConfigureAwait(false);
                    await response.BodyWriter.WriteAsync(forBowler ? picture.Bowler : picture.Coach, httpContext.RequestAborted).ConfigureAwait(false);
                    await response.BodyWriter.WriteAsync(End, httpContext.RequestAborted).ConfigureAwait(false);
                }
                else
                {
                    await response.BodyWriter.WriteAsync(Beat, httpContext.RequestAborted).ConfigureAwait(false);
                }
            }
        }
        catch (OperationCanceledException) when (httpContext.RequestAborted.IsCancellationRequested)
        {
            // The reader left.
        }
    }
}
