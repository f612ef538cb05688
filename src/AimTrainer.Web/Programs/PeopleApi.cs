using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>What was agreed with bowlers, their data as a file, and taking it out of the record. No name is in an address or in the audit.</summary>
internal static class PeopleApi
{
    private const int MostBytes = 16 * 1024, LongestName = 200;

    public static void Map(IEndpointRouteBuilder api)
    {
        var people = api.MapGroup("/people").WithTags("People");
        people.MapPost("/agreed", AgreeAsync).Describe("Keeps what was agreed with a bowler: under age, guardian, how the name is shown on screens.", "Agreed", nameof(Done));
        people.MapPost("/export", ExportAsync).WithMetadata().Describe("Everything that is kept of a bowler, as one zip file.", new ApiText("BowlerNamed", "Text", 200, "application/zip", [404]));
        people.MapPost("/erase", EraseAsync).Describe("Erases everything of a bowler, for good. The name must be given twice.", "EraseBowler", nameof(Erased), 404, 409);
        people.MapPost("/keep", KeepAsync).Describe("Sets after how many months sessions are erased; null keeps them.", "KeepFor", nameof(Done));
    }

    private static async Task<IResult> AgreeAsync(HttpContext context, PeopleRegister people, IReadOnlyList<Station> stations, TimeProvider clock, CancellationToken cancellationToken)
    {
        var today = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        var (consent, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => Consent(json, today), cancellationToken).ConfigureAwait(false);
        if (consent is null)
        {
            return answer!;
        }

        try
        {
            people.Save(consent);
        }
        catch (StoreUnavailableException exception)
        {
            return Problems.NotKept(exception.Message);
        }

        // Screens show it at once: a consent that is taken back must not stay up until the next shot.
        await Task.WhenAll(stations.Select(station => station.RenameAsync(cancellationToken))).ConfigureAwait(false);
        AuditNote.On(context, $"agreed with a bowler: shown {consent.Shown}, {(consent.IsMinor ? "minor" : "adult")}, guardian {(consent.HasGuardian ? "yes" : "no")}");
        return TypedResults.Json(Done.It, WebJson.Options);
    }

    private static BowlerConsent? Consent(ObjectReader json, DateOnly today)
    {
        var bowler = json.Text("bowler", LongestName);
        var minor = json.OptionalFlag("minor") ?? false;
        var guardian = json.OptionalText("guardian", LongestName);
        var shown = json.OptionalChoice<NameShown>("shown") ?? NameShown.Initials;
        if (minor && shown == NameShown.FullName)
        {
            json.Report("shown", "\"fullName\" for a minor", "\"initials\", or \"givenName\" with a guardian's consent: minors are never shown by full name");
        }

        if (minor && shown == NameShown.GivenName && guardian is null)
        {
            json.Report("guardian", "none", "the guardian who agreed, so that more than initials may be shown");
        }

        return bowler is null ? null : new BowlerConsent
        {
            Bowler = bowler.Trim(),
            IsMinor = minor,
            Guardian = minor ? guardian?.Trim() : null,
            GuardianAgreedOn = minor && guardian is not null ? today : null,
            Shown = shown,
            ChosenOn = today,
        };
    }

    private static async Task<IResult> ExportAsync(HttpContext context, BowlerExport export, CancellationToken cancellationToken)
    {
        var (bowler, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => json.Text("bowler", LongestName), cancellationToken).ConfigureAwait(false);
        if (bowler is null)
        {
            return answer!;
        }

        var zip = new MemoryStream();
        if (await export.WriteAsync(bowler, zip, cancellationToken).ConfigureAwait(false) is not { } sessions)
        {
            return Problems.NotFound("bowler: found a name of which nothing is kept; allowed: a name in the record (GET /api/bowlers)");
        }

        AuditNote.On(context, $"a bowler's data exported: {sessions} sessions");
        zip.Position = 0;
        return Results.File(zip, "application/zip", "bowler.zip");
    }

    private static async Task<IResult> EraseAsync(HttpContext context, BowlerErasing erasing, CancellationToken cancellationToken)
    {
        var (bowler, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json =>
        {
            var name = json.Text("bowler", LongestName);
            var again = json.Text("again", LongestName);
            if (name is not null && again is not null && !BowlerName.Same(name, again))
            {
                json.Report("again", "another name", "the bowler's name once more, so that nobody is erased by a slip");
            }

            return again is null ? null : name;
        }, cancellationToken).ConfigureAwait(false);
        if (bowler is null)
        {
            return answer!;
        }

        var (erased, why) = await erasing.EraseAsync(bowler, cancellationToken).ConfigureAwait(false);
        if (why is not null)
        {
            return Problems.Refused(why);
        }

        if (erased is null)
        {
            return Problems.NotFound("bowler: found a name of which nothing is kept; allowed: a name in the record (GET /api/bowlers)");
        }

        AuditNote.On(context, $"erasure {erased.Id}: {erased.Sessions.Count} sessions of one bowler");
        return TypedResults.Json(erased, WebJson.Options);
    }

    private static async Task<IResult> KeepAsync(HttpContext context, PeopleRegister people, CancellationToken cancellationToken)
    {
        var (months, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => new KeepWish((int?)json.OptionalWhole("months", 1, PeopleRegister.MostMonths)), cancellationToken).ConfigureAwait(false);
        if (months is null)
        {
            return answer!;
        }

        try
        {
            people.KeepFor(months.Months);
        }
        catch (StoreUnavailableException exception)
        {
            return Problems.NotKept(exception.Message);
        }

        AuditNote.On(context, months.Months is { } count ? $"sessions are kept for {count} months" : "sessions are kept for ever");
        return TypedResults.Json(Done.It, WebJson.Options);
    }
}
