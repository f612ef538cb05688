using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Drills: the list, a drill's text, a check of a text.</summary>
internal static class DrillApi
{
    public static void Map(IEndpointRouteBuilder api)
    {
        var drills = api.MapGroup("/drills").WithTags("Drills");
        drills.MapGet("/", All).WithSummary("All drills without mistakes, the user's own first.");
        drills.MapGet("/{id}", One).WithSummary("A drill's text, byte for byte.");
        drills.MapPost("/check", CheckAsync).WithSummary("Says everything that is wrong with a drill's text, with line and JSON path.");
    }

    private static IResult All(DrillShelf shelf) => TypedResults.Json(
        shelf.Files().Select(file => (File: file, Read: DrillShelf.Read(file, File.ReadAllBytes(file)).Value))
            .Where(drill => drill.Read is not null)
            .Select(drill => new { Shipped = DrillShelf.IsShipped(drill.File), Drill = DrillSummary.Of(drill.Read!.Script) }).ToList(),
        WebJson.Options);

    private static IResult One(string id, DrillShelf shelf) => shelf.FileOf(id) is { } file
        ? Results.Bytes(File.ReadAllBytes(file), "application/json")
        : Problems.NotFound($"drill: found \"{id}\"; allowed: {string.Join(", ", shelf.Files().Select(Path.GetFileNameWithoutExtension))}");

    private static async Task<IResult> CheckAsync(HttpRequest request, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(request, JsonFile.MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = DrillShelf.Read("drill", bytes);
        return TypedResults.Json(new { Good = read.Value is not null, read.Problems }, WebJson.Options);
    }
}
