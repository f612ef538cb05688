namespace AimTrainer.Domain;

/// <summary>What the bowler is told, and when. What is withheld is still stored.</summary>
/// <param name="When">When.</param>
/// <param name="Says">How much.</param>
public sealed record Feedback(FeedbackWhen When, FeedbackSays Says);
