using Microsoft.AspNetCore.OpenApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace AimTrainer.Web;

/// <summary>The API's description (OpenAPI 3.1) at <c>/openapi/v1.json</c>.</summary>
internal static class ApiDescription
{
    private static readonly Dictionary<int, string> Refusals = new()
    {
        [400] = "The request cannot be taken as it is; the detail says what was found, where, and what is allowed.",
        [401] = "It is not known who asks.",
        [403] = "Not for this role, or for another station.",
        [404] = "There is no such thing.",
        [409] = "Not possible as things stand.",
        [413] = "The body is too long.",
        [415] = "The body is not marked as JSON.",
        [429] = "Too many requests; see Retry-After.",
        [504] = "Another program, which was to do it, did not answer; look whether it was done.",
        [503] = "Not kept, so it does not count. Send it again.",
    };

    public static void AddApiDescription(this IServiceCollection services) => services.AddOpenApi("v1", options =>
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "AimTrainer",
                Version = "1",
                Description = "Stations, sessions, shots and drills of a target practice host. "
                    + "Boards count from the bowler's ball-hand edge; units are in the names. docs/api.md tells more.",
            };
            document.Servers = [];
            document.Components = new OpenApiComponents { Schemas = ApiSchemas.Parse(), SecuritySchemes = Schemes() };
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            if (context.Description.ActionDescriptor.EndpointMetadata.OfType<ApiText>().LastOrDefault() is { } text)
            {
                Describe(operation, text, context);
            }

            return Task.CompletedTask;
        });
    });

    private static void Describe(OpenApiOperation operation, ApiText text, OpenApiOperationTransformerContext context)
    {
        if (text.Takes is { } takes)
        {
            operation.RequestBody = new OpenApiRequestBody { Required = true, Content = Content(ApiTexts.Json, takes) };
        }

        operation.Responses = new OpenApiResponses
        {
            [$"{text.Status}"] = new OpenApiResponse { Description = "Done.", Content = Content(text.MediaType, text.Gives) },
        };
        var door = context.Description.ActionDescriptor.EndpointMetadata.OfType<OpenToAttribute>().LastOrDefault()?.Door ?? Door.Coach;
        int[] usual = [.. door == Door.Anyone ? [] : new[] { 401, 403 }, 429, 503, .. text.Takes is null ? [] : new[] { 400, 413, 415 }];
        foreach (var status in usual.Concat(text.Refusals).Distinct().Order())
        {
            operation.Responses[$"{status}"] = new OpenApiResponse { Description = Refusals[status], Content = Content("application/problem+json", "Problem") };
        }

        operation.Description = door switch
        {
            Door.Anyone => "For anybody.",
            Door.Known => "For whoever is known.",
            Door.Bowler => "For the coach, and a bowler paired to this station, who gets the bowler's view.",
            Door.Projector => "For the coach, and a projector that was let in for this station.",
            Door.Feed => "For the coach, and a feed with a token for this station.",
            Door.Display => "For the coach, and a display with a token for this station.",
            _ => "For the coach.",
        };
    }

    private static Dictionary<string, OpenApiMediaType> Content(string mediaType, string schema) => new()
    {
        [mediaType] = new OpenApiMediaType { Schema = new OpenApiSchemaReference(schema) },
    };

    private static Dictionary<string, IOpenApiSecurityScheme> Schemes() => new()
    {
        ["pass"] = new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.ApiKey,
            In = ParameterLocation.Cookie,
            Name = AccessGate.CookieName,
            Description = $"Set by signing in or pairing; what changes something needs the header {FormTokens.Header} too (the formToken of GET /api/access).",
        },
        ["feedToken"] = new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.Http,
            Scheme = "bearer",
            Description = "The token of a feed, for shots of its station; or of a projector, for its calibration.",
        },
    };
}
