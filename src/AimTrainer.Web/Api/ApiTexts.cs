using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>Puts words on a call.</summary>
internal static class ApiTexts
{
    public const string Json = "application/json", Events = "text/event-stream", Csv = "text/csv";

    public static RouteHandlerBuilder Describe(this RouteHandlerBuilder call, string summary, string? takes, string gives, params int[] refusals) =>
        Describe(call, summary, new ApiText(takes, gives, 200, Json, refusals));

    public static RouteHandlerBuilder Describe(this RouteHandlerBuilder call, string summary, ApiText text) => call.WithSummary(summary).WithMetadata(text);
}
