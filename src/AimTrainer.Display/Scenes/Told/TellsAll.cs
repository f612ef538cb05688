using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>What a block's feedback lets a display say of shots before the last one.</summary>
internal static class TellsAll
{
    /// <summary>Whether the bowler is told after each shot if it held, so that counting the holds gives nothing away.</summary>
    public static bool Holds(Feedback feedback) => feedback.When is FeedbackWhen.Every or FeedbackWhen.Outside;

    /// <summary>Whether the bowler is told after each shot where it crossed.</summary>
    public static bool Crossings(Feedback feedback) => feedback is { When: FeedbackWhen.Every, Says: FeedbackSays.Exact };

    /// <summary>Whether the bowler has been told by the end of the block if each shot held.</summary>
    public static bool HoldsAtEnd(Feedback feedback) => Holds(feedback) || feedback.When is FeedbackWhen.Summary;
}
