using System.Net;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>What every answer tells a browser not to do.</summary>
internal static class SafeHeaders
{
    // Source: Content Security Policy Level 3 (W3C). No script but our own files; data blocks (type application/json) are not run and need no leave.
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; manifest-src 'self'; "
        + "base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    public static Task AddAsync(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        if (context.Request.IsHttps || IsOfThisMachine(context.Request.Host.Host))
        {
            // Elsewhere over plain HTTP browsers ignore it, and complain that they do.
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
        }

        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "geolocation=(), microphone=(), payment=()";
        headers.CacheControl = context.Request.Path.StartsWithSegments("/assets", StringComparison.Ordinal) ? "no-cache" : "no-store";
        return next(context);
    }

    private static bool IsOfThisMachine(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}
