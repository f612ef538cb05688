using System.Text.Json.Serialization;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>The block that is thrown, and how far it is.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">Test or training.</param>
/// <param name="Number">Its number in the drill, from 1.</param>
/// <param name="Of">How many blocks the drill has.</param>
/// <param name="Throws">Shots that count so far.</param>
/// <param name="Shots">How many end it; null when it ends otherwise.</param>
/// <param name="Minutes">How many minutes end it; null when it ends otherwise.</param>
/// <param name="HitsInARow">How many held in a row end it; null when it ends otherwise.</param>
/// <param name="WidthReached">The width that ends it, boards; null when it ends otherwise.</param>
public sealed record BlockView(
    string Name, BlockKind Kind, int Number, int Of, int Throws, int? Shots, double? Minutes, int? HitsInARow,
    [property: JsonPropertyName("widthReachedBoards")] BoardOffset? WidthReached)
{
    /// <summary>The block of a picture.</summary>
    public static BlockView From(DrillBlock block, SessionSnapshot snapshot) => new(
        block.Name, block.Kind, snapshot.BlockNumber, snapshot.Drill!.Blocks.Count, snapshot.Throws, block.Until.Shots, block.Until.Minutes,
        block.Until.HitsInARow, block.Until.WidthReached);
}
