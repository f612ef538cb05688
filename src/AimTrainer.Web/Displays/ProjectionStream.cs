using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// Tells whether projection is stopped: at once, and whenever it changes. For anybody, and so without who stopped it and when: a window
/// elsewhere must go dark also when its token was revoked meanwhile, or it never had one.
/// </summary>
/// <param name="stop">The emergency stop.</param>
/// <param name="clock">The time.</param>
internal sealed class ProjectionStream(EmergencyStop stop, TimeProvider clock) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext) => EventStream.RunAsync(httpContext, WriteAsync);

    private async Task WriteAsync(EventStream stream, CancellationToken left)
    {
        bool? told = null;
        var known = -1L;
        while (true)
        {
            if (stop.State.Stopped is var stopped && stopped != told)
            {
                told = stopped;
                var state = JsonSerializer.SerializeToUtf8Bytes(new ProjectionState(stopped, null, null), DomainJson.Options);
                await stream.SendAsync(DisplayEvents.Projection, 0, state, left).ConfigureAwait(false);
            }
            else
            {
                await stream.BeatAsync(left).ConfigureAwait(false);
            }

            known = await stop.Changes.WaitAsync(known, EventStream.BeatEvery, clock, left).ConfigureAwait(false);
        }
    }
}
