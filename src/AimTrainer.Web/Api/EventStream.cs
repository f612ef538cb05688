using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace AimTrainer.Web;

/// <summary>Writes server-sent events (HTML standard, section 9.2) to one reader.</summary>
internal sealed class EventStream
{
    /// <summary>How long nothing may come before a beat is sent, so that the reader knows that the line still holds.</summary>
    public static readonly TimeSpan BeatEvery = TimeSpan.FromSeconds(5);

    private static readonly byte[] BeatBytes = "event: beat\ndata: {}\n\n"u8.ToArray();
    private static readonly byte[] End = "\n\n"u8.ToArray();

    private readonly HttpResponse _response;

    private EventStream(HttpResponse response) => _response = response;

    /// <summary>Answers with events until the writer is done or the reader leaves.</summary>
    public static async Task RunAsync(HttpContext context, Func<EventStream, CancellationToken, Task> write)
    {
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-cache, no-transform";
        context.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        try
        {
            await context.Response.StartAsync(context.RequestAborted).ConfigureAwait(false);
            await write(new EventStream(context.Response), context.RequestAborted).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The reader left.
        }
    }

    public async Task SendAsync(string name, long id, ReadOnlyMemory<byte> json, CancellationToken cancellationToken)
    {
        var head = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"event: {name}\nid: {id}\ndata: "));
        await _response.BodyWriter.WriteAsync(head, cancellationToken).ConfigureAwait(false);
        await _response.BodyWriter.WriteAsync(json, cancellationToken).ConfigureAwait(false);
        await _response.BodyWriter.WriteAsync(End, cancellationToken).ConfigureAwait(false);
    }

    public async Task BeatAsync(CancellationToken cancellationToken) =>
        await _response.BodyWriter.WriteAsync(BeatBytes, cancellationToken).ConfigureAwait(false);
}
