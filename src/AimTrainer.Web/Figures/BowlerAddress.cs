namespace AimTrainer.Web;

/// <summary>A bowler's name in an address.</summary>
internal static class BowlerAddress
{
    /// <summary>The address of a bowler's page.</summary>
    public static string PageOf(string name) => $"/bowlers/{Uri.EscapeDataString(name)}";

    /// <summary>The address of a bowler's calls.</summary>
    public static string CallsOf(string name) => $"/api/bowlers/{Uri.EscapeDataString(name)}";

    /// <summary>The name; the framework leaves a slash in it as it is in the address, so that it is no step of the path.</summary>
    public static string NameOf(string step) => step.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);
}
