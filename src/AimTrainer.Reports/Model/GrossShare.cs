namespace AimTrainer.Reports;

/// <summary>How many gross misses may be set aside. A few are misreads; more are how the shots really go, or shots at another target, and stay in.</summary>
internal static class GrossShare
{
    private const int OneIn = 10;

    /// <summary>Whether so many of so many measured shots may be set aside: at most one in ten.</summary>
    public static bool MayBeSetAside(int gross, int measured) => gross * OneIn <= measured;
}
