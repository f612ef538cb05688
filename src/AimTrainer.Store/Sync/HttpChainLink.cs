using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;

namespace AimTrainer.Store;

/// <summary>The line to a chain over HTTP. The token says which center sends; it is sent over TLS, or inside one machine only.</summary>
public sealed class HttpChainLink : IChainLink, IDisposable
{
    private readonly HttpClient _client;

    /// <summary>Makes one.</summary>
    /// <param name="address">Where the chain listens; see <see cref="WhyNot"/>.</param>
    /// <param name="token">The center's token, as <c>chain centers add</c> showed it.</param>
    /// <param name="patience">How long an answer may take.</param>
    /// <exception cref="ArgumentException">The address cannot be.</exception>
    public HttpChainLink(Uri address, string token, TimeSpan patience)
    {
        if (WhyNot(address) is { } why)
        {
            throw new ArgumentException(why, nameof(address));
        }

        Name = address.GetLeftPart(UriPartial.Path).TrimEnd('/');
        _client = new HttpClient(new SocketsHttpHandler { ConnectTimeout = patience, PooledConnectionLifetime = TimeSpan.FromMinutes(2) })
        {
            BaseAddress = new Uri(Name + "/"),
            Timeout = patience,
        };
        _client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <summary>Why an address cannot be a chain's, and what is allowed; null when it can.</summary>
    public static string? WhyNot(Uri address) =>
        !address.IsAbsoluteUri || address.Scheme is not ("https" or "http") ? "found no address; allowed: https://SERVER"
        : address.UserInfo.Length > 0 ? "found a name or a password in the address; allowed: https://SERVER, and the token beside it"
        : address.Scheme == "http" && !address.IsLoopback ? $"found http to {address.Host}, where others on the way could read token and names; allowed: https, or http on this machine"
        : null;

    /// <inheritdoc/>
    public Task<HaveAnswer> HaveAsync(HaveRequest request, CancellationToken cancellationToken) =>
        SendAsync<HaveRequest, HaveAnswer>("have", request, cancellationToken);

    /// <inheritdoc/>
    public Task<DeliveryAnswer> DeliverAsync(Delivery delivery, CancellationToken cancellationToken) =>
        SendAsync<Delivery, DeliveryAnswer>("steps", delivery, cancellationToken);

    /// <inheritdoc/>
    public Task<ErasureAnswer> EraseAsync(ErasureRequest request, CancellationToken cancellationToken) =>
        SendAsync<ErasureRequest, ErasureAnswer>("erasures", request, cancellationToken);

    /// <inheritdoc/>
    public async Task<GroupsAnswer?> TellGroupsAsync(GroupsRequest request, CancellationToken cancellationToken)
    {
        try
        {
            return await SendAsync<GroupsRequest, GroupsAnswer>("groups", request, cancellationToken).ConfigureAwait(false);
        }
        catch (ChainAwayException exception) when (exception.IsNoSuchCall)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _client.Dispose();

    private async Task<TAnswer> SendAsync<TRequest, TAnswer>(string what, TRequest request, CancellationToken cancellationToken)
    {
        try
        {
            using var content = JsonContent.Create(request, options: SyncJson.Options);

            // With its length: a body that is cut short on the way is then known to be.
            await content.LoadIntoBufferAsync(cancellationToken).ConfigureAwait(false);
            using var answer = await _client.PostAsync(new Uri($"chain/v1/{what}", UriKind.Relative), content, cancellationToken).ConfigureAwait(false);
            if (!answer.IsSuccessStatusCode)
            {
                throw await RefusedAsync(answer, cancellationToken).ConfigureAwait(false);
            }

            return await answer.Content.ReadFromJsonAsync<TAnswer>(SyncJson.Options, cancellationToken).ConfigureAwait(false)
                ?? throw new JsonException("null");
        }
        catch (OperationCanceledException exception) when (!cancellationToken.IsCancellationRequested)
        {
            throw new ChainAwayException($"{Name}: the chain did not answer in time. It is tried again; everything is kept here meanwhile", exception);
        }
        catch (Exception exception) when (exception is HttpRequestException or IOException)
        {
            throw new ChainAwayException(
                $"{Name}: the chain cannot be reached. It is tried again; everything is kept here meanwhile. (The system says: {exception.Message.TrimEnd('.')})", exception);
        }
        catch (JsonException exception)
        {
            throw new ChainAwayException($"{Name}: what answers there is not a chain, or of another version. Check the address", exception);
        }
    }

    private async Task<Exception> RefusedAsync(HttpResponseMessage answer, CancellationToken cancellationToken)
    {
        const int MostWords = 2000;
        var words = await answer.Content.ReadAsStringAsync(cancellationToken).ConfigureAwait(false);
        words = words.Length > MostWords || words.Length == 0 || answer.Content.Headers.ContentType?.MediaType != "text/plain" ? $"{(int)answer.StatusCode}" : words;
        return answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden or HttpStatusCode.Conflict or HttpStatusCode.BadRequest
            ? new ChainRefusedException($"{Name}: {words}")
            : new ChainAwayException($"{Name}: the chain is not well ({words}). It is tried again; everything is kept here meanwhile") { IsNoSuchCall = answer.StatusCode == HttpStatusCode.NotFound };
    }
}
