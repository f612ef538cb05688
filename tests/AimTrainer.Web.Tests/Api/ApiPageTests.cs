using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web.Tests;

/// <summary>The tables of <c>docs/api.md</c> against the host's own description and the doors that it really has.</summary>
public sealed partial class ApiPageTests
{
    [Fact]
    public async Task Page_EveryCallOfTheDescription_IsNamedWithWhoMayCallItAndNoOtherIs()
    {
        await using var host = await TestHost.StartAsync();
        var described = (await host.GetAsync("/openapi/v1.json")).GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject().Where(call => call.Value.ValueKind == JsonValueKind.Object).Select(call => $"{call.Name.ToUpperInvariant()} {path.Name}")).ToList();
        var doors = host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(route => route.RoutePattern.RawText!.StartsWith("/api", StringComparison.Ordinal))
            .SelectMany(route => route.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Select(method => (
                Call: $"{method} {route.RoutePattern.RawText!.Replace(":int", "", StringComparison.Ordinal).TrimEnd('/')}",
                Who: (route.Metadata.GetMetadata<OpenToAttribute>()?.Door ?? Door.Coach).ToString().ToLowerInvariant())))
            .ToDictionary(one => one.Call, one => one.Who);
        var named = Named(await File.ReadAllLinesAsync(Path.Combine(AppContext.BaseDirectory, "docs", "api.md"), TestContext.Current.CancellationToken));

        Assert.True(described.Count >= 60, $"{described.Count} calls");
        Assert.Equal(described.Order(StringComparer.Ordinal), named.Select(one => one.Call).Order(StringComparer.Ordinal));
        Assert.All(named, one => Assert.True(doors[one.Call] == one.Who, $"{one.Call}: the page says {one.Who}, the host {doors[one.Call]}"));
    }

    /// <summary>The calls of the tables: rows of three cells, whose first names calls and whose last says who.</summary>
    private static List<(string Call, string Who)> Named(IEnumerable<string> lines) =>
        [.. lines.Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => Bar().Split(line)).Where(cells => cells.Length == 5)
            .SelectMany(cells => Code().Matches(cells[1]).Select(call => (call.Groups[1].Value.Split('?')[0], cells[3].Trim())))];

    [GeneratedRegex(@"(?<!\\)\|")]
    private static partial Regex Bar();

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Code();
}
