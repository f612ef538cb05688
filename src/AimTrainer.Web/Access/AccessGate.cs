using System.Globalization;
using System.Net;
using System.Security.Claims;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>
/// Every request comes by here: who asks, whether they may, whether it was meant. What does not say who may go through is the
/// coach's alone, so that a call that was forgotten is closed. What changes something leaves a line in the audit.
/// </summary>
internal sealed class AccessGate(
    RequestDelegate next, Passphrase passphrase, Passes passes, FeedTokens tokens, DisplayTokens displays, HostNames names, IAntiforgery antiforgery, Audit audit)
{
    /// <summary>The cookie that holds a browser's pass.</summary>
    public const string CookieName = "aimtrainer.pass";

    private const string Bearer = "Bearer ";

    public async Task InvokeAsync(HttpContext context)
    {
        if (!names.Are(context.Request.Host))
        {
            await Problems.Misdirected(context.Request.Host.Value ?? "").ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        var visitor = Identify(context, out var badToken);
        if (visitor is not null)
        {
            context.Features.Set(visitor);
            context.User = new ClaimsPrincipal(new ClaimsIdentity(
                visitor.PassId is { } id ? [new Claim(ClaimTypes.NameIdentifier, id)] : [], visitor.PassId is null ? null : "pass"));
        }

        if (context.GetEndpoint() is not { } endpoint)
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        var changes = !(HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method) || HttpMethods.IsOptions(context.Request.Method));
        var door = endpoint.Metadata.GetMetadata<OpenToAttribute>()?.Door ?? Door.Coach;
        var refusal = badToken ? Problems.Unknown("token: found one that is not known here, or was revoked; allowed: one that the coach made (Access page)")
            : await RefusalAsync(context, visitor, door, changes).ConfigureAwait(false);
        try
        {
            await (refusal is not null ? refusal.ExecuteAsync(context) : next(context)).ConfigureAwait(false);
        }
        finally
        {
            // Also when the answer could not be sent: what was asked for may have been done all the same.
            Note(context, endpoint, visitor, changes, badToken);
        }
    }

    private void Note(HttpContext context, Endpoint endpoint, Visitor? visitor, bool changes, bool badToken)
    {
        var note = context.Features.Get<AuditNote>();
        if (note is null
            ? changes && endpoint.Metadata.GetMetadata<OnlyComputes>() is null && visitor is { Role: not (Role.Feed or Role.Display) }
            : note.Detail is not null)
        {
            audit.Write(AuditLine.Of(context, context.Response.StatusCode, note?.Detail));
        }
        else if (badToken)
        {
            audit.WriteRefused(AuditLine.Of(context, context.Response.StatusCode, "a token that is not known"));
        }
    }

    private async Task<IResult?> RefusalAsync(HttpContext context, Visitor? visitor, Door door, bool changes)
    {
        if (changes && CameFromElsewhere(context.Request) is { } elsewhere)
        {
            return Problems.Forbidden(elsewhere);
        }

        if (door == Door.Anyone)
        {
            return null;
        }

        if (visitor is null)
        {
            return IsPage(context) ? Results.Redirect($"/sign-in?next={Uri.EscapeDataString(context.Request.Path)}")
                : Problems.Unknown("who: found nobody known; allowed: sign in (/sign-in), pair a phone (/pair), or send the feed's token as \"Authorization: Bearer ...\"");
        }

        if (!visitor.MayPass(door, Station(context.Request.RouteValues)))
        {
            return IsPage(context) && visitor.Role == Role.Bowler ? Results.Redirect($"/bowler/{visitor.Station}")
                : Problems.Forbidden($"who: found a {visitor.Role.ToString().ToLowerInvariant()} of station {visitor.Station}; allowed: {Allowed(door)}");
        }

        return changes && visitor.ByCookie && !await antiforgery.IsRequestValidAsync(context).ConfigureAwait(false) ? Problems.FormToken() : null;
    }

    private Visitor? Identify(HttpContext context, out bool badToken)
    {
        badToken = false;
        var authorization = context.Request.Headers.Authorization.ToString();
        if (authorization.Length > 0)
        {
            var shown = authorization.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) ? authorization[Bearer.Length..].Trim() : "";
            if (tokens.Find(shown) is { } token)
            {
                return new Visitor(Role.Feed, $"feed {token.Name} ({token.Id})", token.Station, ByCookie: false, () => tokens.IsGood(token.Id));
            }

            if (displays.Find(shown) is { } display)
            {
                return new Visitor(Role.Display, $"display {display.Name} ({display.Id})", display.Station, ByCookie: false, () => displays.IsGood(display.Id))
                {
                    Screen = display.Kind,
                    DisplayId = display.Id,
                };
            }

            // A projector's pass comes as a token, a browser's only as a cookie.
            var known = passes.Find(shown) is { Role: Role.Projector } projector ? projector : null;
            badToken = known is null;
            return known is null ? null
                : new Visitor(Role.Projector, $"projector of station {known.Station} ({known.Id})", known.Station, ByCookie: false, () => passes.IsGood(known.Id));
        }

        if (context.Request.Cookies[CookieName] is { } secret && passes.Find(secret) is { Role: not Role.Projector } pass)
        {
            var name = pass.Role == Role.Coach ? $"coach {pass.Id}" : $"bowler of station {pass.Station} ({pass.Id})";
            return new Visitor(pass.Role, name, pass.Station, ByCookie: true, () => passes.IsGood(pass.Id)) { PassId = pass.Id };
        }

        return IsOfThisMachine(context) && !passphrase.IsSet ? new Visitor(Role.Coach, "coach at this machine", null, ByCookie: false, () => !passphrase.IsSet) : null;
    }

    /// <summary>A request that another program passed on is of who knows what machine.</summary>
    private static bool IsOfThisMachine(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from)
        && !context.Request.Headers.ContainsKey("Forwarded") && !context.Request.Headers.ContainsKey("X-Forwarded-For");

    /// <summary>Says where a browser's request came from, when that is not a page of ours. Programs send neither header.</summary>
    private static string? CameFromElsewhere(HttpRequest request)
    {
        // Source: Fetch Metadata Request Headers (W3C), section 2.2, and RFC 6454, section 7.
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers.Origin.ToString();
        var own = $"{request.Scheme}://{request.Host}";
        return site is not ("" or "same-origin" or "none") ? $"Sec-Fetch-Site: found {site}; allowed: a page of this host"
            : origin.Length > 0 && !origin.Equals(own, StringComparison.OrdinalIgnoreCase) ? $"Origin: found {origin}; allowed: {own}"
            : null;
    }

    private static bool IsPage(HttpContext context) =>
        HttpMethods.IsGet(context.Request.Method) && !context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
        && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);

    private static int? Station(RouteValueDictionary values) =>
        (values.TryGetValue("station", out var value) || values.TryGetValue("Number", out value))
        && int.TryParse(Convert.ToString(value, CultureInfo.InvariantCulture), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Allowed(Door door) => door switch
    {
        Door.Bowler => "the coach, or a bowler paired to this station",
        Door.Feed => "the coach, or a feed with a token for this station",
        Door.Projector => "the coach, or a projector that was let in for this station",
        Door.Display => "the coach, or a display with a token for this station",
        _ => "the coach",
    };
}
