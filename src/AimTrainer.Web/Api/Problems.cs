using AimTrainer.Domain;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace AimTrainer.Web;

/// <summary>Answers that say what is wrong and what to do, as <c>application/problem+json</c> (RFC 9457).</summary>
internal static class Problems
{
    /// <summary>The body holds mistakes: each with its JSON path, what was found and what is allowed.</summary>
    public static ProblemHttpResult Of(ValueList<FileProblem> problems) => TypedResults.Problem(
        title: "The request's body cannot be taken as it is.",
        detail: string.Join("\n", problems.AsEnumerable().Select(problem => $"{(problem.Path.Length > 0 ? problem.Path : "$")}: found {problem.Found}; allowed: {problem.Allowed}")),
        statusCode: StatusCodes.Status400BadRequest,
        extensions: new Dictionary<string, object?>
        {
            ["problems"] = problems.AsEnumerable().Select(problem => new { problem.Line, problem.Path, problem.Found, problem.Allowed }).ToList(),
        });

    /// <summary>One mistake in words.</summary>
    public static ProblemHttpResult BadRequest(string detail) => TypedResults.Problem(
        title: "The request cannot be taken as it is.", detail: detail, statusCode: StatusCodes.Status400BadRequest);

    /// <summary>There is no such thing.</summary>
    public static ProblemHttpResult NotFound(string detail) => TypedResults.Problem(
        title: "There is no such thing here.", detail: detail, statusCode: StatusCodes.Status404NotFound);

    /// <summary>Understood, but not possible as things stand.</summary>
    public static ProblemHttpResult Refused(string detail) => TypedResults.Problem(
        title: "Not possible as things stand.", detail: detail, statusCode: StatusCodes.Status409Conflict);

    /// <summary>The store could not keep it; it may be sent again.</summary>
    public static ProblemHttpResult NotKept(string detail) => TypedResults.Problem(
        title: "Not kept, so it does not count. Send it again.", detail: detail, statusCode: StatusCodes.Status503ServiceUnavailable);
}
