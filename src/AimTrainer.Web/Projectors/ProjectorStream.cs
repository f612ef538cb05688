using System.Text.Json;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// The line of an attached calibration: event <c>attached</c> with the name of the attachment, then <c>action</c> for each action, its id
/// the action's number; <c>replaced</c> when another took its place. The calibration is attached for as long as this is read.
/// </summary>
internal sealed class ProjectorStream(AttachedProjector projector, AttachedProjectors all, TimeProvider clock) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        try
        {
            await EventStream.RunAsync(httpContext, WriteAsync).ConfigureAwait(false);
        }
        finally
        {
            all.Leave(projector);
        }
    }

    private async Task WriteAsync(EventStream stream, CancellationToken left)
    {
        await stream.SendAsync("attached", 0, JsonSerializer.SerializeToUtf8Bytes(new { attachment = projector.Id }), left).ConfigureAwait(false);
        while (stream.Holds)
        {
            if (!await MoreAsync(left).ConfigureAwait(false))
            {
                await stream.BeatAsync(left).ConfigureAwait(false);
                continue;
            }

            if (!projector.Actions.TryRead(out var next))
            {
                await stream.SendAsync(projector.IsReplaced ? "replaced" : "over", 0, "{}"u8.ToArray(), left).ConfigureAwait(false);
                return;
            }

            await stream.SendAsync("action", next.Number, OnOneLine(next.Action), left).ConfigureAwait(false);
        }
    }

    /// <summary>Whether there is an action, or the end; false when nothing came for so long that a beat is due.</summary>
    private async Task<bool> MoreAsync(CancellationToken left)
    {
        using var beat = new CancellationTokenSource(EventStream.BeatEvery, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(left, beat.Token);
        try
        {
            await projector.Actions.WaitToReadAsync(either.Token).ConfigureAwait(false);
            return true;
        }
        catch (OperationCanceledException) when (!left.IsCancellationRequested)
        {
            return false;
        }
    }

    /// <summary>An event's data ends with its line, and JSON may hold line ends.</summary>
    private static byte[] OnOneLine(string json)
    {
        using var document = JsonDocument.Parse(json);
        return JsonSerializer.SerializeToUtf8Bytes(document.RootElement);
    }
}
