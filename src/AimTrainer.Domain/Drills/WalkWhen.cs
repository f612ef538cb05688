namespace AimTrainer.Domain;

/// <summary>What makes a walking line move on.</summary>
public abstract record WalkWhen
{
    /// <summary>After so many shots at one place.</summary>
    public sealed record AfterShots(int Shots) : WalkWhen;

    /// <summary>After so many holds at one place.</summary>
    public sealed record AfterHolds(int Holds) : WalkWhen;
}
