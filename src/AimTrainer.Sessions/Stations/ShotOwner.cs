using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Whether a shot from a shared source belongs to the bowler of a session.</summary>
public static class ShotOwner
{
    /// <summary>Why the shot is not of this session, or null when it is or nobody said.</summary>
    public static string? WhyNotOf(SessionSetup setup, FeedItem.ShotRead read)
    {
        if (read.Bowler is { } bowler && !string.Equals(bowler, setup.Bowler, StringComparison.OrdinalIgnoreCase))
        {
            return $"this shot is {bowler}'s, the session is {setup.Bowler}'s: left out";
        }

        return read.Hand is { } hand && hand != setup.Hand
            ? $"this shot was thrown with the {Word(hand)} hand, the session is for the {Word(setup.Hand)}: left out" : null;
    }

    private static string Word(Hand hand) => hand == Hand.Right ? "right" : "left";
}
