using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web;

/// <summary>What goes wrong on the way becomes an answer in words; only a fault of the program's own is a 500, and its trace goes to the log alone.</summary>
internal sealed partial class Faults(RequestDelegate next, ILogger<Faults> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked has left.
        }
        catch (Exception exception) when (!context.Response.HasStarted)
        {
            await Answer(context, exception).ExecuteAsync(context).ConfigureAwait(false);
        }
    }

    private IResult Answer(HttpContext context, Exception exception)
    {
        switch (exception)
        {
            case BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge }:
                return Problems.TooLong(ConsoleSettings.MostBodyBytes);
            case BadHttpRequestException bad:
                return Results.Problem(
                    title: "The request cannot be taken as it is.",
                    detail: $"{bad.Message.TrimEnd('.')}; the calls and what they take are in /openapi/v1.json",
                    statusCode: bad.StatusCode);
            case StoreUnavailableException unavailable:
                return Problems.NotKept(unavailable.Message);
            case IOException when context.RequestAborted.IsCancellationRequested:
                return Problems.BadRequest("the connection broke");
            default:
                // Not the path: it can hold a bowler's name.
                SayFault(log, exception, context.Request.Method, (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "an unknown address");
                return Problems.Fault();
        }
    }

    [LoggerMessage(LogLevel.Error, "{Method} {Route} failed")]
    private static partial void SayFault(ILogger log, Exception exception, string method, string route);
}
