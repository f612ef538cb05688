namespace AimTrainer.Web;

/// <summary>A drill of the list.</summary>
/// <param name="Shipped">Whether it came with the program; else it is the user's own.</param>
/// <param name="Drill">What it is.</param>
public sealed record DrillListed(bool Shipped, DrillSummary Drill);
