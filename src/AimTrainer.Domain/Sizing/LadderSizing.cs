namespace AimTrainer.Domain;

/// <summary>Widths from a list: narrower after enough hits among the last shots, wider after enough misses among them.</summary>
/// <param name="Widths">Widest first, all different.</param>
/// <param name="HitsToNarrow">Hits among the last <paramref name="OfLast"/> shots at a width that lead to the next narrower.</param>
/// <param name="MissesToWiden">Misses among them that lead back to the next wider.</param>
/// <param name="OfLast">How many shots are looked back on; the look starts anew at each width.</param>
public sealed record LadderSizing(ValueList<BoardOffset> Widths, int HitsToNarrow, int MissesToWiden, int OfLast) : Sizing
{
    /// <inheritdoc/>
    public override SizingState Start(BoardOffset? width) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot) => throw new NotImplementedException();

    /// <inheritdoc/>
    public override SizingState SetByHand(SizingState state, BoardOffset width) => throw new NotImplementedException();
}
