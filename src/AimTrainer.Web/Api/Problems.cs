using AimTrainer.Domain;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace AimTrainer.Web;

/// <summary>Answers that say what is wrong and what to do, as <c>application/problem+json</c> (RFC 9457).</summary>
internal static class Problems
{
    /// <summary>The <c>type</c> of the answer to a request without a good form token: a page gets a new one and tries once more.</summary>
    public const string FormTokenType = "/problems/form-token";

    /// <summary>The <c>type</c> of the answer to a shot at another aim than the one that is due: somebody decides what becomes of it.</summary>
    public const string OtherAimType = "/problems/other-aim";

    /// <summary>The body holds mistakes: each with its JSON path, what was found and what is allowed.</summary>
    public static ProblemHttpResult Of(ValueList<FileProblem> problems) => TypedResults.Problem(
        title: "The request's body cannot be taken as it is.",
        detail: string.Join("\n", problems.AsEnumerable().Select(problem =>
            $"{(problem.Path.Length > 0 ? problem.Path : "$")}: found {problem.Found}; allowed: {problem.Allowed}")),
        statusCode: StatusCodes.Status400BadRequest,
        extensions: new Dictionary<string, object?>
        {
            ["problems"] = problems.AsEnumerable().Select(problem => new { problem.Line, problem.Path, problem.Found, problem.Allowed }).ToList(),
        });

    /// <summary>One mistake in words.</summary>
    public static ProblemHttpResult BadRequest(string detail) => Say(StatusCodes.Status400BadRequest, "The request cannot be taken as it is.", detail);

    /// <summary>Nobody known.</summary>
    public static ProblemHttpResult Unknown(string detail) => Say(StatusCodes.Status401Unauthorized, "It is not known who asks.", detail);

    /// <summary>Known, and may not.</summary>
    public static ProblemHttpResult Forbidden(string detail) => Say(StatusCodes.Status403Forbidden, "Not for you to do.", detail);

    /// <summary>There is no such thing.</summary>
    public static ProblemHttpResult NotFound(string detail) => Say(StatusCodes.Status404NotFound, "There is no such thing here.", detail);

    /// <summary>Understood, but not possible as things stand.</summary>
    public static ProblemHttpResult Refused(string detail) => Say(StatusCodes.Status409Conflict, "Not possible as things stand.", detail);

    /// <summary>The body is too long.</summary>
    public static ProblemHttpResult TooLong(long most) => Say(
        StatusCodes.Status413PayloadTooLarge, "The request's body is too long.", $"body: found more than {most} bytes; allowed: at most {most}");

    /// <summary>The body is of a sort that is not taken.</summary>
    public static ProblemHttpResult NotJson(string? contentType) => Say(
        StatusCodes.Status415UnsupportedMediaType, "The request's body is not marked as JSON.",
        $"content type: found {(string.IsNullOrEmpty(contentType) ? "none" : FoundText.Quoted(contentType))}; allowed: application/json");

    /// <summary>The host is not of this name.</summary>
    public static ProblemHttpResult Misdirected(string host) => Say(
        StatusCodes.Status421MisdirectedRequest, "This host is not of that name.",
        $"Host: found {FoundText.Quoted(host)}; allowed: the address that the program printed at its start, or a name given to it with --host");

    /// <summary>Too much in too short a time.</summary>
    public static ProblemHttpResult TooMany(string detail) => Say(StatusCodes.Status429TooManyRequests, "Too many requests.", detail);

    /// <summary>The store could not keep it; it may be sent again.</summary>
    public static ProblemHttpResult NotKept(string detail) => Say(StatusCodes.Status503ServiceUnavailable, "Not kept, so it does not count. Send it again.", detail);

    /// <summary>Another program, which was to do it, did not answer.</summary>
    public static ProblemHttpResult NoAnswer(string detail) => Say(StatusCodes.Status504GatewayTimeout, "No answer: it may or may not be done.", detail);

    /// <summary>A fault of the program's own.</summary>
    public static ProblemHttpResult Fault() => Say(
        StatusCodes.Status500InternalServerError, "A fault of this program.",
        "what went wrong is in the program's log; look with GET whether it was done before you send it again");

    /// <summary>A browser's request without the form token, or with somebody else's.</summary>
    public static ProblemHttpResult FormToken() => TypedResults.Problem(
        type: FormTokenType, title: "The page's form token is missing or no longer good.",
        detail: $"{FormTokens.Header}: found none, or one of another sign-in; allowed: the formToken of GET /api/access, together with its cookie",
        statusCode: StatusCodes.Status400BadRequest);

    /// <summary>A shot that was logged while another aim was shown.</summary>
    public static ProblemHttpResult OtherAim(Aim due) => TypedResults.Problem(
        type: OtherAimType, title: "Thrown at another target than the one that is due now.",
        detail: $"aim: found another than what is due now, {string.Join(", then ", due.Targets.AsEnumerable().Select(InWords))}; not graded. "
            + "Allowed: without ?aim= it is graded against what is due now; else leave it out",
        statusCode: StatusCodes.Status409Conflict);

    private static string InWords(NamedTarget target) => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"board {target.Target.Centre.Boards:0.##} at {target.Target.Distance.Value:0.#} ft, {target.Target.Width.Boards:0.##} wide");

    private static ProblemHttpResult Say(int status, string title, string detail) => TypedResults.Problem(title: title, detail: detail, statusCode: status);
}
