using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// A station's pictures: event <c>picture</c> with the whole state, the newest at once; a slow reader skips those between, and one
/// who comes back needs nothing but the newest.
/// </summary>
internal sealed class LiveStream(LiveStation live, bool forBowler, WebMeters meters, TimeProvider clock) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext) => EventStream.RunAsync(httpContext, async (stream, left) =>
    {
        var sent = 0L;
        while (stream.Holds)
        {
            if (await live.NextAsync(sent, EventStream.BeatEvery, clock, left).ConfigureAwait(false) is { } picture)
            {
                sent = picture.Number;
                await stream.SendAsync("picture", sent, forBowler ? picture.Bowler : picture.Coach, left).ConfigureAwait(false);
                meters.Delivered(clock.GetElapsedTime(picture.MadeAt), "live");
            }
            else
            {
                await stream.BeatAsync(forBowler ? [] : [live], left).ConfigureAwait(false);
            }
        }
    });
}
