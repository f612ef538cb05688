using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;

namespace AimTrainer.Web;

/// <summary>
/// How much one address may ask for: shots generously, other calls at a person's pace, and only so many streams at once. Signing in
/// and pairing have tighter limits of their own (<see cref="Tries"/>).
/// </summary>
internal static class Paces
{
    private const int CallsASecond = 100, StreamsAtOnce = 128;

    /// <summary>The mark of a call that is a stream.</summary>
    public sealed class StreamMark;

    /// <summary>The mark of a call that takes shots.</summary>
    public sealed class ShotMark;

    public static void Set(RateLimiterOptions options, int shotsASecond)
    {
        options.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, (string Sort, string From)>(context =>
        {
            var marks = context.GetEndpoint()?.Metadata;
            var from = (context.Connection.RemoteIpAddress ?? IPAddress.None).ToString();
            return !IsCall(context.Request.Path) ? RateLimitPartition.GetNoLimiter(("page", ""))
                : marks?.GetMetadata<StreamMark>() is not null
                    ? RateLimitPartition.GetConcurrencyLimiter(("stream", from), _ => new ConcurrencyLimiterOptions { PermitLimit = StreamsAtOnce })
                : marks?.GetMetadata<ShotMark>() is not null ? Bucket(("shot", from), shotsASecond)
                : Bucket(("call", from), CallsASecond);
        });
        options.OnRejected = async (rejected, cancellationToken) =>
        {
            if (rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var wait))
            {
                rejected.HttpContext.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
            }

            await Problems.TooMany("pace: found more from this address than is taken; allowed: wait a second (see Retry-After) and send it again; docs/api.md has the limits")
                .ExecuteAsync(rejected.HttpContext).ConfigureAwait(false);
        };
    }

    private static bool IsCall(PathString path) =>
        path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase) || path.StartsWithSegments("/openapi", StringComparison.OrdinalIgnoreCase);

    private static RateLimitPartition<(string Sort, string From)> Bucket((string Sort, string From) key, int aSecond) =>
        RateLimitPartition.GetTokenBucketLimiter(key, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = 3 * aSecond,
            TokensPerPeriod = Math.Max(1, aSecond / 10),
            ReplenishmentPeriod = TimeSpan.FromMilliseconds(100),
            AutoReplenishment = true,
        });
}
