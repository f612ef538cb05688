namespace AimTrainer.Sessions;

/// <summary>A bowler's name as screens may show it: initials unless chosen otherwise; a minor never by full name.</summary>
public static class ScreenName
{
    /// <summary>The name for screens.</summary>
    /// <param name="bowler">The name in the records.</param>
    /// <param name="consent">What was agreed; null when nothing was.</param>
    public static string Of(string bowler, BowlerConsent? consent) => Allowed(consent) switch
    {
        NameShown.FullName => bowler.Trim(),
        NameShown.GivenName => Parts(bowler) is [var given, ..] ? given : "",
        _ => Initials(bowler),
    };

    /// <summary>What of the wish is allowed: for a minor at most the given name, and that only when a guardian has agreed.</summary>
    public static NameShown Allowed(BowlerConsent? consent) => consent switch
    {
        null => NameShown.Initials,
        { IsMinor: true, HasGuardian: false } => NameShown.Initials,
        { IsMinor: true, Shown: NameShown.FullName } => NameShown.GivenName,
        _ => consent.Shown,
    };

    /// <summary>"A. L." of "Ann Lee".</summary>
    public static string Initials(string bowler) =>
        string.Join(' ', Parts(bowler).Select(part => $"{char.ToUpperInvariant(part[0])}{(char.IsHighSurrogate(part[0]) && part.Length > 1 ? part[1].ToString() : "")}."));

    private static string[] Parts(string bowler) => bowler.Split([' ', '\t', '-'], StringSplitOptions.RemoveEmptyEntries);
}
