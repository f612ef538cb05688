using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>What a call adds to its line of the audit.</summary>
/// <param name="Detail">What was done, without secrets.</param>
internal sealed record AuditNote(string Detail)
{
    /// <summary>Adds it.</summary>
    public static void On(HttpContext context, string detail) => context.Features.Set(new AuditNote(detail));
}
