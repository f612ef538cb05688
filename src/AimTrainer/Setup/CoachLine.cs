using AimTrainer.Domain;

namespace AimTrainer.Setup;

/// <summary>What a coach typed at the terminal.</summary>
internal abstract record CoachLine
{
    /// <summary>An action for the session.</summary>
    internal sealed record Act(SessionInput Input) : CoachLine;

    /// <summary>The list of words was asked for.</summary>
    internal sealed record Help : CoachLine;

    /// <summary>The result is to be cleared from the displays; the record stays as it is.</summary>
    internal sealed record Clear : CoachLine;

    /// <summary>The session is to be left open, to be gone on with later.</summary>
    internal sealed record Leave : CoachLine;

    /// <summary>Not understood.</summary>
    internal sealed record Wrong(string Why) : CoachLine;
}
