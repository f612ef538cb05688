using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>All stations at once: event <c>picture</c> with a list of those that changed, the first time of all.</summary>
internal sealed class LiveStreamOfAll(LiveStations live, TimeProvider clock) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext) => EventStream.RunAsync(httpContext, async (stream, left) =>
    {
        var sent = new long[live.Count];
        var known = -1L;
        var number = 0L;
        while (stream.Holds)
        {
            var now = await live.Changes.WaitAsync(known, EventStream.BeatEvery, clock, left).ConfigureAwait(false);
            if (now == known)
            {
                await stream.BeatAsync(live.All, left).ConfigureAwait(false);
                continue;
            }

            known = now;
            using var list = new MemoryStream();
            for (var i = 0; i < sent.Length; i++)
            {
                var picture = live.All[i].Picture;
                if (picture.Number > sent[i])
                {
                    sent[i] = picture.Number;
                    list.WriteByte(list.Length == 0 ? (byte)'[' : (byte)',');
                    await list.WriteAsync(picture.Coach, left).ConfigureAwait(false);
                }
            }

            if (list.Length > 0)
            {
                list.WriteByte((byte)']');
                await stream.SendAsync("picture", ++number, list.ToArray(), left).ConfigureAwait(false);
            }
        }
    });
}
