using System.Text.Json;
using AimTrainer.Sessions;
using AimTrainer.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace AimTrainer.Web;

/// <summary>Takes what the centers of a chain send (docs/chain.md). Nobody gets in without a center's token.</summary>
public static class ChainApi
{
    /// <summary>Longest request, bytes: text in JSON may be twice as long as it is.</summary>
    private const int MostBytes = (2 * SyncFormat.MostBytes) + (4 * 1024 * 1024);

    private const string Bearer = "Bearer ";

    /// <summary>Maps the calls.</summary>
    /// <param name="app">The host.</param>
    /// <param name="inbox">Where it goes.</param>
    public static void MapChain(this WebApplication app, IChainInbox inbox)
    {
        app.MapPost("/chain/v1/have", context => AnswerAsync<HaveRequest, HaveAnswer>(
            context, inbox, request => (request.Messages, request.Events, request.Sessions.Count > SyncFormat.MostAsked), inbox.HaveAsync));
        app.MapPost("/chain/v1/steps", context => AnswerAsync<Delivery, DeliveryAnswer>(
            context, inbox,
            request => (request.Messages, request.Events, request.Sessions.Count > SyncFormat.MostSessions || request.Sessions.Sum(session => session.Steps.Count) > SyncFormat.MostSteps),
            inbox.TakeAsync));
        app.MapPost("/chain/v1/erasures", context => AnswerAsync<ErasureRequest, ErasureAnswer>(
            context, inbox, request => (request.Messages, request.Events, request.Sessions.Count > SyncFormat.MostAsked), inbox.EraseAsync));
        app.MapPost("/chain/v1/groups", context => AnswerAsync<GroupsRequest, GroupsAnswer>(
            context, inbox,
            request => (request.Messages, request.Events, request.Groups.Count > SyncFormat.MostGroups || request.Programs.Count > SyncFormat.MostGroups
                || request.Groups.AsEnumerable().Any(group => group.Members.Count > BowlerGroup.MostMembers)),
            inbox.TakeGroupsAsync));
        app.MapGet("/health", context => context.Response.WriteAsync("ok\n"));
    }

    private static async Task AnswerAsync<TRequest, TAnswer>(
        HttpContext context,
        IChainInbox inbox,
        Func<TRequest, (int Messages, int Events, bool IsTooMuch)> format,
        Func<ChainCenter, TRequest, CancellationToken, Task<TAnswer>> answer)
        where TRequest : class
    {
        var stop = context.RequestAborted;
        context.Features.Get<IHttpMaxRequestBodySizeFeature>()!.MaxRequestBodySize = MostBytes;
        try
        {
            var authorization = context.Request.Headers.Authorization.ToString();
            var center = authorization.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase)
                ? await inbox.FindCenterAsync(authorization[Bearer.Length..].Trim(), stop).ConfigureAwait(false) : null;
            if (center is null)
            {
                await SayAsync(context, StatusCodes.Status401Unauthorized, "token: found none that is known here, or one that was taken back; allowed: one that the chain made (aimtrainer chain centers add)").ConfigureAwait(false);
                return;
            }

            var request = await JsonSerializer.DeserializeAsync<TRequest>(context.Request.Body, SyncJson.Options, stop).ConfigureAwait(false) ?? throw new JsonException("null");
            var (messages, events, tooMuch) = format(request);
            if (SyncFormat.WhyNot(messages, events, "the center", "the chain") is { } why)
            {
                await SayAsync(context, StatusCodes.Status409Conflict, why).ConfigureAwait(false);
            }
            else if (tooMuch)
            {
                await SayAsync(context, StatusCodes.Status400BadRequest, "found more at once than a chain takes; see docs/chain.md for how much").ConfigureAwait(false);
            }
            else
            {
                var said = await answer(center, request, stop).ConfigureAwait(false);
                context.Response.ContentType = "application/json";
                await JsonSerializer.SerializeAsync(context.Response.Body, said, SyncJson.Options, stop).ConfigureAwait(false);
            }
        }
        catch (JsonException exception)
        {
            await SayAsync(context, StatusCodes.Status400BadRequest, $"the request cannot be read ({exception.Message.TrimEnd('.')}). Bring center and chain to the same version of aimtrainer").ConfigureAwait(false);
        }
        catch (StoreUnavailableException exception)
        {
            await SayAsync(context, StatusCodes.Status503ServiceUnavailable, exception.Message).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is OperationCanceledException or BadHttpRequestException or IOException)
        {
            // The line was cut: nobody is there to hear anything. It is sent again.
            context.Abort();
        }
    }

    private static Task SayAsync(HttpContext context, int status, string words)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain";
        return context.Response.WriteAsync(words);
    }
}
