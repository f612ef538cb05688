using AimTrainer.Domain;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>Words for refusals that would come without any: no such address, not this method.</summary>
internal static class EmptyAnswers
{
    public static Task SayAsync(StatusCodeContext status)
    {
        var context = status.HttpContext;
        var request = context.Request;
        if (context.Response.StatusCode == StatusCodes.Status404NotFound && HttpMethods.IsGet(request.Method)
            && !request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            && request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase))
        {
            context.Response.Redirect("/not-found");
            return Task.CompletedTask;
        }

        var answer = context.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => Problems.NotFound($"address: found {FoundText.Quoted(request.Path)}; allowed: those in /openapi/v1.json, and the pages from / on"),
            StatusCodes.Status405MethodNotAllowed => Results.Problem(
                title: "Not by this method.", detail: $"method: found {FoundText.Short(request.Method)}; allowed: {context.Response.Headers.Allow}",
                statusCode: StatusCodes.Status405MethodNotAllowed),
            StatusCodes.Status415UnsupportedMediaType => Problems.NotJson(request.ContentType),
            StatusCodes.Status413PayloadTooLarge => Problems.TooLong(ConsoleSettings.MostBodyBytes),
            var other => Results.Problem(title: "The request cannot be taken as it is.", detail: "the calls and what they take are in /openapi/v1.json", statusCode: other),
        };
        return answer.ExecuteAsync(context);
    }
}
