using System.Globalization;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Web;

/// <summary>Writes server-sent events (HTML standard, section 9.2) to one reader.</summary>
internal sealed class EventStream
{
    /// <summary>How long nothing may come before a beat is sent, so that the reader knows that the line still holds.</summary>
    public static readonly TimeSpan BeatEvery = TimeSpan.FromSeconds(5);

    private static readonly byte[] Beat = "event: beat\ndata: "u8.ToArray();
    private static readonly byte[] Nothing = "{}"u8.ToArray();
    private static readonly byte[] End = "\n\n"u8.ToArray();

    private readonly HttpResponse _response;
    private readonly Visitor? _reader;

    private EventStream(HttpResponse response, Visitor? reader) => (_response, _reader) = (response, reader);

    /// <summary>Whether the reader may still read: a pass can run out or be taken back meanwhile.</summary>
    public bool Holds => _reader?.Holds() ?? true;

    /// <summary>Whether the reader is a display with a token of its own.</summary>
    public bool IsOfADisplay => _reader?.DisplayId is not null;

    /// <summary>Answers with events until the writer is done or the reader leaves.</summary>
    public static async Task RunAsync(HttpContext context, Func<EventStream, CancellationToken, Task> write)
    {
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-cache, no-transform";
        context.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        var stopping = context.RequestServices.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping;
        using var over = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, stopping);
        try
        {
            await context.Response.StartAsync(over.Token).ConfigureAwait(false);
            await write(new EventStream(context.Response, Visitor.Of(context)), over.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (over.IsCancellationRequested)
        {
            // The reader left, or the host stops: it need not wait for readers who never leave.
        }
    }

    public async Task SendAsync(string name, long id, ReadOnlyMemory<byte> json, CancellationToken cancellationToken)
    {
        var head = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"event: {name}\nid: {id}\ndata: "));
        await _response.BodyWriter.WriteAsync(head, cancellationToken).ConfigureAwait(false);
        await _response.BodyWriter.WriteAsync(json, cancellationToken).ConfigureAwait(false);
        await _response.BodyWriter.WriteAsync(End, cancellationToken).ConfigureAwait(false);
    }

    public Task BeatAsync(CancellationToken cancellationToken) => WriteBeatAsync(Nothing, cancellationToken);

    /// <summary>A beat that says how old the feeds' last lines are by now: nothing else about a lane changes by itself.</summary>
    public Task BeatAsync(IEnumerable<LiveStation> stations, CancellationToken cancellationToken)
    {
        var feeds = stations.Select(live => (live.Station.Number, live.Feed)).Where(one => one.Feed is not null).ToDictionary(one => one.Number, one => one.Feed);
        return WriteBeatAsync(feeds.Count == 0 ? Nothing : JsonSerializer.SerializeToUtf8Bytes(new { Feeds = feeds }, WebJson.Options), cancellationToken);
    }

    private async Task WriteBeatAsync(ReadOnlyMemory<byte> json, CancellationToken cancellationToken)
    {
        await _response.BodyWriter.WriteAsync(Beat, cancellationToken).ConfigureAwait(false);
        await _response.BodyWriter.WriteAsync(json, cancellationToken).ConfigureAwait(false);
        await _response.BodyWriter.WriteAsync(End, cancellationToken).ConfigureAwait(false);
    }
}
