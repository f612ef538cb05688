using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>A ball that a member of a group compares.</summary>
/// <param name="Bowler">Who.</param>
/// <param name="Ball">The ball and its role.</param>
internal sealed record MemberBall(string Bowler, ChosenBall Ball);
