using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.ServerSentEvents;
using System.Text.Json;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Reads from a host whether projection is stopped.</summary>
internal static class StopStream
{
    /// <summary>Reads until the line is lost or ended.</summary>
    /// <param name="client">Asks; its own time limit is off, because a stream has no end.</param>
    /// <param name="server">The host.</param>
    /// <param name="clock">The time.</param>
    /// <param name="told">Told whether projection is stopped: at once, and whenever it changes.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <returns>How it ended.</returns>
    public static async Task<DisplayHostTry> ReadAsync(HttpClient client, Uri server, TimeProvider clock, Action<bool> told, CancellationToken cancellationToken)
    {
        using var patience = new CancellationTokenSource(DisplayFollower.Patience, clock);
        using var over = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, cancellationToken);
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(server, "api/projection/live"));
            request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("text/event-stream"));
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, over.Token).ConfigureAwait(false);
            if (!answer.IsSuccessStatusCode || answer.Content.Headers.ContentType?.MediaType != "text/event-stream")
            {
                return answer.StatusCode is HttpStatusCode.TooManyRequests or >= HttpStatusCode.InternalServerError
                    ? new DisplayHostTry.Lost(string.Create(CultureInfo.InvariantCulture, $"it answered {(int)answer.StatusCode}"))
                    : new DisplayHostTry.Differs("it is no host of aimtrainer, or one too old to tell its emergency stop: use the same version of aimtrainer for both");
            }

            var stream = await answer.Content.ReadAsStreamAsync(over.Token).ConfigureAwait(false);
            await using (stream.ConfigureAwait(false))
            {
                await foreach (var item in SseParser.Create(stream, (_, data) => data.ToArray()).EnumerateAsync(over.Token).ConfigureAwait(false))
                {
                    patience.CancelAfter(DisplayFollower.Patience);
                    if (item.EventType == DisplayEvents.Projection)
                    {
                        told(JsonSerializer.Deserialize<ProjectionState>(item.Data, DomainJson.Options)?.Stopped ?? throw new JsonException("found null"));
                    }
                }
            }

            return new DisplayHostTry.Lost("it ended the connection");
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            return new DisplayHostTry.Lost("nothing was heard of it for too long");
        }
        catch (Exception exception) when (exception is HttpRequestException or IOException)
        {
            return new DisplayHostTry.Lost((exception.InnerException ?? exception).Message.TrimEnd('.'));
        }
        catch (Exception exception) when (exception is JsonException or FormatException)
        {
            return new DisplayHostTry.Differs("what the host sends is not what this version reads; use the same version of aimtrainer for both");
        }
    }
}
