using System.Net;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using Microsoft.Extensions.Options;

namespace AimTrainer.Web.Tests;

/// <summary>What a host logs by itself (warnings and worse) is fit for a collector: no token, no passphrase, no bowler's name.</summary>
public sealed class LogTests
{
    [Fact]
    public async Task Log_OfEverythingThatGoesWrong_HoldsNoNamesAndNoSecrets()
    {
        const string Bowler = "Zebulonia";
        await using var host = await TestHost.StartAsync(lines: true, passphrase: true, adjustOptions: options => options with
        {
            Adjust = services =>
            {
                options.Adjust!(services);
                services.AddSingleton<ISessionDocuments, Failing>();
            },
        });
        using var coach = host.Browser();
        await coach.SignInAsync();
        var token = (await TestHost.BodyAsync(await coach.PostAsync("/api/access/displays", """{"name":"x","station":1,"kind":"overhead"}"""))).GetProperty("token").GetString()!;
        await coach.PostAsync("/api/stations/1/sessions", $$"""{"bowler":"{{Bowler}}","drill":"ten-shot-spread","hand":"right"}""");
        await coach.PostAsync("/api/stations/1/actions", """{"kind":"begin"}""");
        await coach.PostAsync("/api/stations/1/shots", """{"id":"s","arrowsBoard":99}""");
        await coach.PostAsync("/api/access/sign-in", """{"passphrase":"not the right words"}""");
        await coach.SendAsync(HttpMethod.Get, $"/api/bowlers/{Bowler}x");
        await using (var display = new LookingDisplay(host.Address, 2, ScreenKind.Overhead, token))
        {
            await display.UntilAsync(one => one.Dark.Reason is Display.DarkReason.NotAllowed);
        }

        var session = (await TestHost.BodyAsync(await coach.SendAsync(HttpMethod.Get, $"/api/sessions?bowler={Bowler}")))[0].GetProperty("sessionId").GetString();
        Assert.Equal(HttpStatusCode.InternalServerError, (await coach.SendAsync(HttpMethod.Get, $"/api/sessions/{session}/shots.csv?bowler={Bowler}")).StatusCode);

        // The fault is there, by its route; the log that is written by itself begins at warnings.
        var worse = host.Log.At(LogLevel.Warning);
        Assert.Contains("/api/sessions/{sessionId}/shots.csv", worse, StringComparison.Ordinal);
        foreach (var secret in (string[])[Bowler, token, TestHost.Words, "not the right words", coach.Cookies["aimtrainer.pass"]!.Value])
        {
            Assert.DoesNotContain(secret, worse, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Log_AskedForAsJson_IsWrittenSo()
    {
        await using var host = await TestHost.StartAsync(adjustOptions: options => options with { Logs = Setup.LogFormat.Json });

        Assert.Equal(ConsoleFormatterNames.Json, host.Services.GetRequiredService<IOptions<ConsoleLoggerOptions>>().Value.FormatterName);
    }

    /// <summary>A fault of the program's own.</summary>
    private sealed class Failing : ISessionDocuments
    {
        public string Json(Domain.SessionSetup setup, Domain.DrillScript drill, SessionRecord record) => throw new InvalidOperationException("made to fail");

        public string ShotsAsCsv(Domain.SessionSetup setup, SessionRecord record) => throw new InvalidOperationException("made to fail");
    }
}
