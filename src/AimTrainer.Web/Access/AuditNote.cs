using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>What a call adds to its line of the audit.</summary>
/// <param name="Detail">What was done, without secrets; null for a call that is not worth a line.</param>
internal sealed record AuditNote(string? Detail)
{
    /// <summary>Leaves it out: it was allowed, and changed nothing that is kept.</summary>
    public static void Quiet(HttpContext context) => context.Features.Set(new AuditNote(null as string));

    /// <summary>Adds it.</summary>
    public static void On(HttpContext context, string detail) => context.Features.Set(new AuditNote(detail));
}
