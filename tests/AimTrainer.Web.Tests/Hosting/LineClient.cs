using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Web.Tests;

/// <summary>A feed over TCP.</summary>
internal sealed class LineClient : IDisposable
{
    private readonly TcpClient _client;
    private readonly StreamReader _answers;

    private LineClient(TcpClient client)
    {
        _client = client;
        _answers = new StreamReader(client.GetStream(), Encoding.UTF8);
    }

    public static async Task<LineClient> OpenAsync(IPEndPoint address, int? station = null, string? token = null)
    {
        var client = new TcpClient();
        await client.ConnectAsync(address, TestContext.Current.CancellationToken);
        var lines = new LineClient(client);
        var members = new List<string>();
        if (station is not null)
        {
            members.Add($"\"station\":{station}");
        }

        if (token is not null)
        {
            members.Add($"\"token\":\"{token}\"");
        }

        if (members.Count > 0)
        {
            await lines.WriteAsync($"{{\"hello\":{{{string.Join(',', members)}}}}}\n");
        }

        return lines;
    }

    public Task WriteAsync(string text) => WriteBytesAsync(Encoding.UTF8.GetBytes(text));

    public async Task WriteBytesAsync(byte[] bytes) => await _client.GetStream().WriteAsync(bytes, TestContext.Current.CancellationToken);

    /// <summary>The next answer; null when the host closed the connection.</summary>
    public async Task<JsonElement?> AnswerAsync()
    {
        try
        {
            return await _answers.ReadLineAsync(TestContext.Current.CancellationToken) is { } line ? JsonDocument.Parse(line).RootElement : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    public async Task<JsonElement> SayAsync(string line)
    {
        await WriteAsync(line + "\n");
        return (await AnswerAsync())!.Value;
    }

    /// <summary>The word of an answer.</summary>
    public static string Word(JsonElement? answer) => answer!.Value.GetProperty("answer").GetString()!;

    /// <summary>Why a line was refused.</summary>
    public static string Why(JsonElement? answer) => answer!.Value.GetProperty("why").GetString()!;

    /// <summary>Says that no more will be sent; answers can still be read.</summary>
    public void Done() => _client.Client.Shutdown(SocketShutdown.Send);

    public void Dispose()
    {
        _answers.Dispose();
        _client.Dispose();
    }
}
