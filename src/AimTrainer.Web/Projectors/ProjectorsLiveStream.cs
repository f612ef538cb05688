using System.Text.Json;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>All attached calibrations: event <c>picture</c> with the list of them and their states, at once and after each change; a slow reader skips those between.</summary>
internal sealed class ProjectorsLiveStream(AttachedProjectors projectors, TimeProvider clock) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext) => EventStream.RunAsync(httpContext, async (stream, left) =>
    {
        var known = -1L;
        while (stream.Holds)
        {
            var now = await projectors.Changes.WaitAsync(known, EventStream.BeatEvery, clock, left).ConfigureAwait(false);
            if (now == known)
            {
                await stream.BeatAsync(left).ConfigureAwait(false);
                continue;
            }

            known = now;
            var views = projectors.All.Select(one => new AttachedView(one.Station, one.Projector, one.Since, one.State)).ToList();
            await stream.SendAsync("picture", now, JsonSerializer.SerializeToUtf8Bytes(views, WebJson.Options), left).ConfigureAwait(false);
        }
    });
}
