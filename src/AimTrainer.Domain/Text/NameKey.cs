using System.Text.RegularExpressions;

namespace AimTrainer.Domain;

/// <summary>
/// The form of a name that is compared, so that "ann lee" and "Ann  Lee" are one bowler, and "blue one" and "Blue One" one ball:
/// without outer and repeated white space, in upper case. Worked out here and not by the database, so that every database agrees, beyond ASCII too.
/// </summary>
public static partial class NameKey
{
    /// <summary>The compared form of a name.</summary>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public static string Of(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return WhiteSpace().Replace(name.Trim(), " ").ToUpperInvariant();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex WhiteSpace();
}
