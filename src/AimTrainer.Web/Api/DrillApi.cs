using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Drills: the list, a drill's text, a check of a text.</summary>
internal static class DrillApi
{
    public static void Map(IEndpointRouteBuilder api)
    {
        var drills = api.MapGroup("/drills").WithTags("Drills");
        drills.MapGet("/", All).Describe("All drills without mistakes, the user's own first.", null, "Drills");
        drills.MapGet("/{id}", One).Describe("A drill's text, byte for byte.", null, "Drill", 404);
        drills.MapPut("/{id}", SaveAsync).Describe("Keeps a drill of the user's own.", "Drill", nameof(DrillSummary));
        drills.MapDelete("/{id}", Delete).Describe(
            "Deletes a drill of the user's own; a shipped one of that id is seen again. Records keep the drill they were thrown with.", null, nameof(Done), 404, 409);
        drills.MapPost("/check", CheckAsync).Describe("Says everything that is wrong with a drill's text, with line and JSON path.", "Drill", nameof(DrillChecked));
    }

    private static IResult Delete(string id, HttpContext context, DrillShelf shelf)
    {
        try
        {
            if (shelf.Delete(id))
            {
                AuditNote.On(context, $"own drill {id} deleted");
                return TypedResults.Json(Done.It, WebJson.Options);
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Problems.NotKept($"the drill could not be deleted: {exception.Message}");
        }

        return shelf.FileOf(id) is not null ? Problems.Refused($"drill {id} came with the program: only your own can be deleted") : NoDrill(id, shelf);
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
            return Problems.BadRequest($"$.id: found \"{drill.Script.Id}\"; allowed: {FoundText.Quoted(id)}, as in the address");
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
        shelf.Files().Select(file => (File: file, Read: DrillShelf.Read(file).Value)).Where(drill => drill.Read is not null)
            .Select(drill => new DrillListed(DrillShelf.IsShipped(drill.File), DrillSummary.Of(drill.Read!.Script))).ToValueList(),
        WebJson.Options);

    private static IResult One(string id, DrillShelf shelf) =>
        shelf.FileOf(id) is { } file && BytesOf(file) is { } bytes ? Results.Bytes(bytes, "application/json") : NoDrill(id, shelf);

    /// <summary>A file may be deleted between the list and the look.</summary>
    private static byte[]? BytesOf(string file)
    {
        try
        {
            return File.ReadAllBytes(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static ProblemHttpResult NoDrill(string id, DrillShelf shelf) =>
        Problems.NotFound($"drill: found {FoundText.Quoted(id)}; allowed: {string.Join(", ", shelf.Files().Select(Path.GetFileNameWithoutExtension))}");

    private static async Task<IResult> CheckAsync(HttpRequest request, CancellationToken cancellationToken)
    {
        var body = await RequestBody.ReadAsync(request, JsonFile.MostBytes, cancellationToken).ConfigureAwait(false);
        if (body.Bytes is not { } bytes)
        {
            return body.Answer!;
        }

        var read = DrillShelf.Read("drill", bytes);
        return TypedResults.Json(new DrillChecked(read.Value is not null, read.Problems), WebJson.Options);
    }
}
