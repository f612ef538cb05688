using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace AimTrainer.Web.Tests;

/// <summary>A browser as our pages make it behave.</summary>
internal sealed class Browser : IDisposable
{
    private readonly CookieContainer _cookies = new();

    public Browser(Uri address) => Client = new HttpClient(new SocketsHttpHandler { CookieContainer = _cookies, AllowAutoRedirect = false }) { BaseAddress = address };

    public HttpClient Client { get; }

    public CookieCollection Cookies => _cookies.GetCookies(Client.BaseAddress!);

    public void Dispose() => Client.Dispose();

    public async Task<JsonElement> MeAsync() => await Client.GetFromJsonAsync<JsonElement>("/api/access", TestContext.Current.CancellationToken);

    public async Task<string?> FormTokenAsync() => (await MeAsync()).GetProperty("formToken").GetString();

    /// <summary>Sends what a page sends, with the form token.</summary>
    public async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, string? json = null)
    {
        var request = new HttpRequestMessage(method, path) { Content = json is null ? null : TestHost.Json(json) };
        if (await FormTokenAsync() is { } token)
        {
            request.Headers.Add("x-aimtrainer-form", token);
        }

        return await Client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public Task<HttpResponseMessage> PostAsync(string path, string? json = null) => SendAsync(HttpMethod.Post, path, json);

    public async Task SignInAsync()
    {
        var answer = await PostAsync("/api/access/sign-in", JsonSerializer.Serialize(new { passphrase = TestHost.Words }));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    /// <summary>Starts a session on a station and shows its first target.</summary>
    public async Task BeginAsync(int station)
    {
        Assert.Equal(HttpStatusCode.Created, (await PostAsync($"/api/stations/{station}/sessions", """{"bowler":"Ann","drill":"ten-shot-spread"}""")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PostAsync($"/api/stations/{station}/actions", """{"kind":"begin"}""")).StatusCode);
    }

    /// <summary>Pairs to a station by a code that the coach makes.</summary>
    public async Task PairAsync(Browser coach, int station)
    {
        var made = await TestHost.BodyAsync(await coach.PostAsync("/api/access/codes", $$"""{"station":{{station}}}"""));
        var answer = await PostAsync("/api/access/pair", $$"""{"code":"{{made.GetProperty("code").GetString()}}"}""");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }
}
