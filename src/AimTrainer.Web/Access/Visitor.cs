using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>Who is asking.</summary>
/// <param name="Role">What they may do.</param>
/// <param name="Name">What the audit calls them; never a secret.</param>
/// <param name="Station">The one station of a bowler or a feed; null for the coach.</param>
/// <param name="ByCookie">Whether a cookie says so: then a browser sends it unasked, and what changes something needs the form token too.</param>
/// <param name="Holds">Whether it still is so: a pass can run out or be taken back while a stream is open.</param>
public sealed record Visitor(Role Role, string Name, int? Station, bool ByCookie, Func<bool> Holds)
{
    /// <summary>The id of the pass, when there is one.</summary>
    public string? PassId { get; init; }

    /// <summary>What a display is; null for whoever else.</summary>
    public Sessions.ScreenKind? Screen { get; init; }

    /// <summary>The id of a display's token; null for whoever else.</summary>
    public string? DisplayId { get; init; }

    /// <summary>Who is asking; null when nobody is known.</summary>
    public static Visitor? Of(HttpContext context) => context.Features.Get<Visitor>();

    /// <summary>Whether they may go through.</summary>
    /// <param name="door">Who may.</param>
    /// <param name="station">The station that the address names; null when it names none.</param>
    internal bool MayPass(Door door, int? station) => door switch
    {
        Door.Anyone or Door.Known => true,
        Door.Bowler => Role == Role.Coach || (Role == Role.Bowler && station is not null && station == Station),
        Door.Feed => Role == Role.Coach || (Role == Role.Feed && station is not null && station == Station),
        Door.Projector => Role == Role.Coach || (Role == Role.Projector && station is not null && station == Station),
        Door.Display => Role == Role.Coach || (Role == Role.Display && station is not null && station == Station),
        _ => Role == Role.Coach,
    };
}
