using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What a list says of a drill.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Purpose">The one thing that it trains or tests.</param>
/// <param name="WhoFor">Who it is for.</param>
/// <param name="AboutMinutes">How long it takes.</param>
/// <param name="Blocks">How many blocks it has.</param>
/// <param name="Cautions">What to take care of.</param>
/// <param name="Balls">The roles of the balls that it compares; empty when it compares none.</param>
/// <param name="AsksHowArmFeels">Whether the bowler is asked how the arm feels.</param>
public sealed record DrillSummary(
    string Id, string Name, string Purpose, string WhoFor, int AboutMinutes, int Blocks, ValueList<string> Cautions, ValueList<string> Balls, bool AsksHowArmFeels)
{
    /// <summary>The summary of a drill.</summary>
    public static DrillSummary Of(DrillScript drill) =>
        new(drill.Id, drill.Name, drill.Purpose, drill.WhoFor, drill.AboutMinutes, drill.Blocks.Count, drill.Cautions,
            drill.Blocks.Select(block => block.Order).OfType<Order.Compare>().SelectMany(order => order.Balls).Distinct().ToValueList(), drill.AsksHowArmFeels);
}
