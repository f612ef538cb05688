using AimTrainer.Domain;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Signing in, pairing phones, tokens of feeds.</summary>
internal static class AccessApi
{
    private const int MostBytes = 4 * 1024, LongestName = 100;

    public static void Map(IEndpointRouteBuilder api)
    {
        var access = api.MapGroup("/access").WithTags("Access");
        access.MapGet("/", Me).OpenTo(Door.Anyone).Describe("Who asks, and the form token of a page.", null, nameof(AccessAnswer));
        access.MapPost("/sign-in", SignInAsync).OpenTo(Door.Anyone)
            .Describe("Signs the coach in: sets a cookie for seven days. Five tries a minute.", "SignIn", nameof(AccessAnswer), 400, 401, 409, 429);
        access.MapPost("/sign-out", SignOut).OpenTo(Door.Known).Describe("Ends the pass of this browser.", null, nameof(Done), 401);
        access.MapPost("/pair", PairAsync).OpenTo(Door.Anyone)
            .Describe("Pairs a bowler's phone by a code: sets a cookie for twelve hours. Ten tries a minute.", "Pair", nameof(AccessAnswer), 400, 401, 429);
        access.MapPost("/projectors", LetInAsync).OpenTo(Door.Anyone)
            .Describe("Lets a projector's calibration in by a code: a token for twelve hours, shown this once. Ten tries a minute.", "Pair", nameof(ProjectorLetIn), 400, 401, 429);
        access.MapPost("/codes", CodeAsync)
            .Describe("Makes a code for a station, for a phone or a projector. It works once, for ten minutes.", "NewCode", nameof(PairingCode), 400, 404);
        access.MapGet("/pairings", (Passes passes) => Json(passes.Paired().Select(Paired).ToValueList()))
            .Describe("The phones that are paired, and the projectors that were let in.", null, "Pairings");
        access.MapDelete("/pairings/{id}", Unpair).Describe("Ends a pairing.", null, nameof(Done), 404);
        access.MapGet("/feeds", (FeedTokens tokens) => Json(tokens.All.AsEnumerable().Select(Listed).ToValueList()))
            .Describe("The feeds that have a token; the tokens themselves are not kept.", null, "Feeds");
        access.MapPost("/feeds", MakeTokenAsync).Describe("Makes a token for a feed of one station. It is shown this once.", "NewFeed", nameof(FeedTokenMade), 400, 404, 409);
        access.MapDelete("/feeds/{id}", Revoke).Describe("Revokes a token.", null, nameof(Done), 404);
    }

    private static IResult Me(HttpContext context, Passphrase passphrase, ConsoleSettings settings, IAntiforgery antiforgery) =>
        Json(Answer(context, Visitor.Of(context), passphrase, settings, antiforgery));

    private static AccessAnswer Answer(HttpContext context, Visitor? visitor, Passphrase passphrase, ConsoleSettings settings, IAntiforgery antiforgery) => new(
        visitor?.Role, visitor?.Station, passphrase.IsSet, settings.OnNetwork, visitor is { ByCookie: true } ? antiforgery.GetAndStoreTokens(context).RequestToken : null);

    private static async Task<IResult> SignInAsync(HttpContext context, Passphrase passphrase, Passes passes, ConsoleSettings settings, SignInTries tries, IAntiforgery antiforgery)
    {
        var (words, answer) = await TextAsync(context, "passphrase", Passphrase.Longest).ConfigureAwait(false);
        if (answer is not null)
        {
            return answer;
        }

        if (!passphrase.IsSet)
        {
            return Problems.Refused("passphrase: none is set; set one with: aimtrainer passphrase");
        }

        if (tries.OfPassphrases.Refuse(From(context)) is { } wait)
        {
            return TooMany(context, wait);
        }

        if (!passphrase.Matches(words!))
        {
            AuditNote.On(context, "a wrong passphrase");
            return Problems.Unknown("passphrase: found one that is not the coach's; allowed: the one that was set with: aimtrainer passphrase");
        }

        var (pass, secret) = passes.Give(Role.Coach, null);
        GiveCookies(context, antiforgery, secret, Passes.CoachFor);
        AuditNote.On(context, $"signed in as coach {pass.Id}");
        return Json(new AccessAnswer(Role.Coach, null, true, settings.OnNetwork, null));
    }

    private static IResult SignOut(HttpContext context, Passes passes)
    {
        if (Visitor.Of(context)?.PassId is { } id)
        {
            passes.TakeBack(id);
            context.Response.Cookies.Delete(AccessGate.CookieName, new CookieOptions { Path = "/", HttpOnly = true, SameSite = SameSiteMode.Strict });
        }

        return Json(Done.It);
    }

    private static async Task<IResult> PairAsync(
        HttpContext context, PairingCodes codes, Passes passes, Passphrase passphrase, ConsoleSettings settings, SignInTries tries, IAntiforgery antiforgery)
    {
        var (given, answer) = await ForCodeAsync(Role.Bowler, context, codes, passes, tries).ConfigureAwait(false);
        if (given is not var (pass, secret))
        {
            return answer!;
        }

        GiveCookies(context, antiforgery, secret, Passes.PairedFor);
        AuditNote.On(context, $"paired to station {pass.Station} as {pass.Id}");
        return Json(new AccessAnswer(Role.Bowler, pass.Station, passphrase.IsSet, settings.OnNetwork, null));
    }

    private static async Task<IResult> LetInAsync(HttpContext context, PairingCodes codes, Passes passes, SignInTries tries)
    {
        var (given, answer) = await ForCodeAsync(Role.Projector, context, codes, passes, tries).ConfigureAwait(false);
        if (given is not var (pass, secret))
        {
            return answer!;
        }

        AuditNote.On(context, $"projector of station {pass.Station} let in as {pass.Id}");
        return Json(new ProjectorLetIn(secret, pass.Station!.Value, pass.Until));
    }

    /// <summary>Gives a pass for the code in the body.</summary>
    private static async Task<((Pass Pass, string Secret)? Given, IResult? Answer)> ForCodeAsync(
        Role role, HttpContext context, PairingCodes codes, Passes passes, SignInTries tries)
    {
        var (code, answer) = await TextAsync(context, "code", 20).ConfigureAwait(false);
        if (answer is not null)
        {
            return (null, answer);
        }

        if (tries.OfCodes.Refuse(From(context)) is { } wait)
        {
            return (null, TooMany(context, wait));
        }

        if (codes.Use(role, code!.Replace(" ", "", StringComparison.Ordinal)) is not { } station)
        {
            AuditNote.On(context, "a wrong code");
            return (null, Problems.Unknown("code: found one that is not known, was used or is over; allowed: a code of six digits that the coach made in the last ten minutes"));
        }

        return (passes.Give(role, station), null);
    }

    private static async Task<IResult> CodeAsync(HttpContext context, LiveStations live, PairingCodes codes, ConsoleSettings settings)
    {
        var read = await ReadAsync(context, json => (json.OptionalWord("for", "phone", "projector"), json.Whole("station", 1, 64)) is var (use, number) && number is { } one
            ? (use == "projector" ? Role.Projector : Role.Bowler, (int)one) : null as (Role Role, int Station)?).ConfigureAwait(false);
        if (read.Answer is not null)
        {
            return read.Answer;
        }

        var (role, station) = read.Value!.Value;
        if (live.Find(station) is null)
        {
            return Problems.NotFound($"$.station: found {station}; allowed: 1 to {live.Count}");
        }

        var (code, until) = codes.New(role, station);
        var (origin, reachable) = PhoneAddress.Of(context.Request, settings);

        // After the #, so that the code is in no log on the way.
        var address = $"{origin}/pair#{code}";
        AuditNote.On(context, $"a code for a {(role == Role.Projector ? "projector" : "phone")} of station {station}");
        return Json(new PairingCode(code, station, until, address, reachable, QrPicture.Svg(address)));
    }

    private static IResult Unpair(string id, HttpContext context, Passes passes)
    {
        if (passes.Paired().All(pass => pass.Id != id) || !passes.TakeBack(id))
        {
            return Problems.NotFound($"pairing: found {FoundText.Quoted(id)}; allowed: one of GET /api/access/pairings");
        }

        AuditNote.On(context, $"pairing {id} ended");
        return Json(Done.It);
    }

    private static async Task<IResult> MakeTokenAsync(HttpContext context, LiveStations live, FeedTokens tokens)
    {
        var read = await ReadAsync(context, json => json.Text("name", LongestName) is { } name && json.Whole("station", 1, 64) is { } number
            ? (name, (int)number) : null as (string Name, int Station)?).ConfigureAwait(false);
        if (read.Answer is not null)
        {
            return read.Answer;
        }

        var (name, station) = read.Value!.Value;
        if (live.Find(station) is null)
        {
            return Problems.NotFound($"$.station: found {station}; allowed: 1 to {live.Count}");
        }

        if (tokens.Make(name, station) is not { } made)
        {
            return Problems.Refused($"there are {FeedTokens.Most} tokens already: revoke one that is not used");
        }

        AuditNote.On(context, $"token {made.Kept.Id} for a feed of station {station}");
        return Json(new FeedTokenMade(Listed(made.Kept), made.Token));
    }

    private static IResult Revoke(string id, HttpContext context, FeedTokens tokens)
    {
        if (!tokens.Revoke(id))
        {
            return Problems.NotFound($"feed: found {FoundText.Quoted(id)}; allowed: one of GET /api/access/feeds");
        }

        AuditNote.On(context, $"token {id} revoked");
        return Json(Done.It);
    }

    private static Pairing Paired(Pass pass) => new(pass.Id, pass.Role, pass.Station!.Value, pass.Since, pass.Until);

    private static FeedListed Listed(FeedToken token) => new(token.Id, token.Name, token.Station, token.Since);

    /// <summary>One text, the only member of the body. It may be a secret: no message holds what was found.</summary>
    private static async Task<(string? Text, IResult? Answer)> TextAsync(HttpContext context, string name, int longest)
    {
        var body = await RequestBody.ReadAsync(context.Request, MostBytes, context.RequestAborted).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return (null, body.Answer);
        }

        var file = JsonFile.Read(RequestBody.Name, bytes);
        var text = file.Root is { Kind: JsonKind.Object, Members: [{ Value: { Kind: JsonKind.Text } value } member] } && member.Name == name ? value.Text : null;
        return text is { Length: > 0 } && text.Length <= longest ? (text, null)
            : (null, Problems.BadRequest($"$.{name}: found something else; allowed: {{\"{name}\": \"...\"}}, a text of 1 to {longest} characters"));
    }

    private static async Task<(T? Value, IResult? Answer)> ReadAsync<T>(HttpContext context, Func<ObjectReader, T?> read)
        where T : struct
    {
        var body = await RequestBody.ReadAsync(context.Request, MostBytes, context.RequestAborted).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return (null, body.Answer);
        }

        var file = JsonFile.Read(RequestBody.Name, bytes);
        T? value = null;
        if (file.Root is { } root && ObjectReader.Of(file, root) is { } json)
        {
            value = read(json);
            json.Done();
        }

        return file.HasProblems || value is null ? (null, Problems.Of(file.Problems)) : (value, null);
    }

    private static IResult TooMany(HttpContext context, TimeSpan wait)
    {
        context.Response.Headers.RetryAfter = $"{(int)Math.Ceiling(wait.TotalSeconds)}";
        return Problems.TooMany($"tries: found too many in this minute; allowed: again in {(int)Math.Ceiling(wait.TotalSeconds)} s");
    }

    private static void GiveCookies(HttpContext context, IAntiforgery antiforgery, string secret, TimeSpan goodFor)
    {
        context.Response.Cookies.Append(
            AccessGate.CookieName, secret,
            new CookieOptions { Path = "/", HttpOnly = true, SameSite = SameSiteMode.Strict, Secure = context.Request.IsHttps, MaxAge = goodFor, IsEssential = true });

        // The cookie of the form tokens too: were it set by the first page that asks, two pages that ask at once would each get one of their own,
        // and the tokens of one of them would be refused.
        antiforgery.GetAndStoreTokens(context);
    }

    private static string From(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";

    private static IResult Json<T>(T value) => TypedResults.Json(value, WebJson.Options);
}
