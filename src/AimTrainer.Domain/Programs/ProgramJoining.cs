namespace AimTrainer.Domain;

/// <summary>Who may join a program.</summary>
/// <param name="Who">In words.</param>
/// <param name="Minors">Whether those under age may.</param>
/// <param name="Most">At most so many bowlers; null for no limit.</param>
public sealed record ProgramJoining(string Who, MinorsRule Minors, int? Most)
{
    /// <summary>Why somebody may not join; null when nothing is in the way.</summary>
    /// <param name="isMinor">Whether the bowler is under age.</param>
    /// <param name="hasGuardian">Whether a guardian's consent is recorded.</param>
    /// <param name="joined">How many have joined already.</param>
    public string? WhyNot(bool isMinor, bool hasGuardian, int joined) =>
        joined >= Most ? $"the program takes {Most} bowlers and is full"
        : isMinor && Minors == MinorsRule.No ? "the program is for adults"
        : isMinor && !hasGuardian ? "a minor joins when a guardian's consent is recorded: note it on the bowler's page first"
        : !isMinor && Minors == MinorsRule.Only ? "the program is for minors"
        : null;
}
