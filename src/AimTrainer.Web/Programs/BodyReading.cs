using AimTrainer.Domain;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>Reads the JSON object of a request by hand, so that every mistake is told with its path.</summary>
internal static class BodyReading
{
    /// <summary>Reads it.</summary>
    /// <param name="request">The request.</param>
    /// <param name="most">At most so many bytes.</param>
    /// <param name="read">Takes what it needs; names that it did not ask for are mistakes.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>What was read, or the answer that says what is wrong.</returns>
    public static async Task<(T? Value, IResult? Answer)> ReadAsync<T>(HttpRequest request, int most, Func<ObjectReader, T?> read, CancellationToken cancellationToken)
        where T : class
    {
        var body = await RequestBody.ReadAsync(request, most, cancellationToken).ConfigureAwait(false);
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
}
