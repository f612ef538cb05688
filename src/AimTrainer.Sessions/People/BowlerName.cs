namespace AimTrainer.Sessions;

/// <summary>When two written names are one bowler: without regard to case and to outer and repeated white space, as the record has it.</summary>
public static class BowlerName
{
    /// <summary>Whether both are the same bowler.</summary>
    public static bool Same(string one, string other) => Normal(one) == Normal(other);

    private static string Normal(string name) => string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToUpperInvariant();
}
