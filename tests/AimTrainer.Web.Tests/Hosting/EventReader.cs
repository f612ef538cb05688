using System.Globalization;
using System.Text.Json;

namespace AimTrainer.Web.Tests;

/// <summary>Reads server-sent events. Source: HTML standard, section 9.2.6 (fields, and an empty line ends an event).</summary>
internal sealed class EventReader : IDisposable
{
    private readonly HttpResponseMessage _answer;
    private readonly StreamReader _reader;

    private EventReader(HttpResponseMessage answer, StreamReader reader) => (_answer, _reader) = (answer, reader);

    public static async Task<EventReader> OpenAsync(HttpClient client, string path, long? lastEventId = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (lastEventId is { } last)
        {
            request.Headers.Add("Last-Event-ID", last.ToString(CultureInfo.InvariantCulture));
        }

        var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType?.MediaType);
        return new EventReader(answer, new StreamReader(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken)));
    }

    /// <summary>The next event that is no beat; null at the end of the stream.</summary>
    public async Task<(string Name, long Id, JsonElement Data)?> NextAsync()
    {
        while (true)
        {
            var (name, id, data) = ("message", 0L, "");
            while (true)
            {
                var line = await _reader.ReadLineAsync(TestContext.Current.CancellationToken);
                if (line is null)
                {
                    return null;
                }

                if (line.Length == 0)
                {
                    break;
                }

                var colon = line.IndexOf(": ", StringComparison.Ordinal);
                var (field, value) = (line[..colon], line[(colon + 2)..]);
                (name, id, data) = field switch
                {
                    "event" => (value, id, data),
                    "id" => (name, long.Parse(value, CultureInfo.InvariantCulture), data),
                    "data" => (name, id, data + value),
                    _ => (name, id, data),
                };
            }

            if (name != "beat")
            {
                return (name, id, JsonDocument.Parse(data).RootElement);
            }
        }
    }

    public void Dispose()
    {
        _reader.Dispose();
        _answer.Dispose();
    }
}
