namespace AimTrainer.Domain;

/// <summary>Whether a throw counts as the same throw.</summary>
/// <param name="IsComparable">Yes, no, or null when something it hangs on was not measured.</param>
/// <param name="Reasons">Why not, or what is not known; empty for a plain yes.</param>
public sealed record Comparability(bool? IsComparable, ValueList<string> Reasons)
{
    /// <summary>Nothing speaks against it.</summary>
    public static Comparability Yes { get; } = new(true, []);
}
