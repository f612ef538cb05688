using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>Takes the JSON body of a request, with limits.</summary>
internal static class RequestBody
{
    /// <summary>What messages call the body.</summary>
    public const string Name = "request";

    /// <summary>Reads the whole body.</summary>
    /// <param name="request">The request.</param>
    /// <param name="most">At most so many bytes.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>The bytes, or the answer that says what is wrong.</returns>
    public static async Task<(byte[]? Bytes, IResult? Answer)> ReadAsync(HttpRequest request, int most, CancellationToken cancellationToken)
    {
        if (!request.HasJsonContentType())
        {
            return (null, Problems.NotJson(request.ContentType));
        }

        if (request.ContentLength > most)
        {
            return (null, Problems.TooLong(most));
        }

        using var bytes = new MemoryStream();
        var piece = new byte[8192];
        while (await request.Body.ReadAsync(piece, cancellationToken).ConfigureAwait(false) is > 0 and var read)
        {
            bytes.Write(piece, 0, read);
            if (bytes.Length > most)
            {
                return (null, Problems.TooLong(most));
            }
        }

        return (bytes.ToArray(), null);
    }
}
