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
        drills.MapPut("/{id}", SaveAsync).WithSummary("Keeps a drill of the user's own.");
        drills.MapPost("/check", CheckAsync).WithSummary("Says everything that is wrong with a drill's text, with line and JSON path.");
    }

    private static async Task<IResult> SaveAsync(string id, HttpRequest request, DrillShelf shelf, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(request, JsonFile.MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = DrillShelf.Read("drill", bytes);
        if (read.Value is not { } drill)
        {
            return Problems.Of(read.Problems);
        }

        if (drill.Script.Id != id)
        {
            return Problems.BadRequest($"$.id: found \"{drill.Script.Id}\"; allowed: \"{id}\", as in the address");
        }

        try
        {
            shelf.Save(drill);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Problems.NotKept($"the drill could not be written: {exception.Message}");
        }

        return TypedResults.Json(DrillSummary.Of(drill.Script), WebJson.Options);
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
