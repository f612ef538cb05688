using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>One line of the audit.</summary>
/// <param name="What">What was asked for, as <c>POST /api/stations/1/actions</c>.</param>
/// <param name="Status">What was answered: the HTTP status.</param>
/// <param name="Who">Who: <c>coach at this machine</c>, <c>coach 1f…</c>, <c>bowler of station 2 (1f…)</c>.</param>
/// <param name="From">The address that it came from.</param>
/// <param name="Detail">More, as <c>void, step 17 of session …</c>.</param>
internal sealed record AuditLine(string What, int Status, string Who, string? From, string? Detail)
{
    /// <summary>The line of a request.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">What was answered.</param>
    /// <param name="detail">More, without secrets.</param>
    public static AuditLine Of(HttpContext context, int status, string? detail) => new(
        $"{context.Request.Method} {context.Request.Path}", status, Visitor.Of(context)?.Name ?? "nobody known", context.Connection.RemoteIpAddress?.ToString(), detail);

    /// <summary>When.</summary>
    public DateTimeOffset At { get; init; }
}
