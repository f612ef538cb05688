using System.Numerics;

namespace AimTrainer.Domain;

/// <summary>Widths from a list: narrower after enough hits among the last shots, wider after enough misses among them.</summary>
/// <param name="Widths">At least one, widest first, all different, each 0.5 to 20 boards. Shown within the rule's limits.</param>
/// <param name="HitsToNarrow">
/// Hits among the last <paramref name="OfLast"/> shots at a width that lead to the next narrower, 1 to <paramref name="OfLast"/>.
/// </param>
/// <param name="MissesToWiden">Misses among them that lead back to the next wider, 1 to <paramref name="OfLast"/>.</param>
/// <param name="OfLast">
/// How many shots are looked back on, 1 to 64; the look starts anew at each width. Less than <paramref name="HitsToNarrow"/> plus
/// <paramref name="MissesToWiden"/>, so that never both are met.
/// </param>
/// <remarks>
/// A step is taken as soon as its count is there, even before <paramref name="OfLast"/> shots were thrown at the width. Only a hit
/// narrows and only a miss widens.
/// </remarks>
/// <exception cref="ArgumentException">The values do not fit together, or one is outside its range.</exception>
public sealed record LadderSizing(ValueList<BoardOffset> Widths, int HitsToNarrow, int MissesToWiden, int OfLast) : Sizing
{
    private const int LongestLook = 64;

    /// <summary>The widths, widest first.</summary>
    public ValueList<BoardOffset> Widths { get; } = CheckedWidths(Widths);

    /// <summary>How many shots are looked back on.</summary>
    public int OfLast { get; } = Guard.InRange(OfLast, 1, LongestLook);

    /// <summary>Hits among them that narrow.</summary>
    public int HitsToNarrow { get; } = Guard.InRange(HitsToNarrow, 1, OfLast);

    /// <summary>Misses among them that widen.</summary>
    public int MissesToWiden { get; } = CheckedMisses(MissesToWiden, HitsToNarrow, OfLast);

    /// <inheritdoc/>
    /// <param name="width">One of the list; null for its widest.</param>
    /// <exception cref="ArgumentException">The width is not in the list, or the limits are the wrong way round.</exception>
    public override SizingState Start(BoardOffset? width)
    {
        var rung = width is { } given ? Widths.AsSpan().IndexOf(given) : 0;
        return rung >= 0
            ? At(rung)
            : throw new ArgumentException(
                $"found a starting width of {width} boards; allowed: one of the ladder's widths {Widths}",
                nameof(width));
    }

    /// <inheritdoc/>
    public override SizingState After(SizingState state, SizedShot shot)
    {
        var now = Own<State>(state);
        var shots = Math.Min(now.Shots + 1, OfLast);
        var hits = ((now.Hits << 1) | (shot.Held ? 1UL : 0UL)) & (ulong.MaxValue >> (LongestLook - OfLast));
        var hitCount = BitOperations.PopCount(hits);
        var next = hitCount >= HitsToNarrow ? Toward(now, 1)
            : shots - hitCount >= MissesToWiden ? Toward(now, -1)
            : null;
        return next ?? now with { Hits = hits, Shots = shots };
    }

    /// <inheritdoc/>
    /// <remarks>The width shown need not be of the list; the steps go on from the nearest that is (the wider of two).</remarks>
    public override SizingState SetByHand(SizingState state, BoardOffset width)
    {
        Own<State>(state);
        var nearest = 0;
        for (var i = 1; i < Widths.Count; i++)
        {
            if ((Widths[i] - width).Abs() < (Widths[nearest] - width).Abs())
            {
                nearest = i;
            }
        }

        return new State(Clamped(width), nearest, 0, 0);
    }

    private State At(int rung) => new(Clamped(Widths[rung]), rung, 0, 0);

    // Null where there is no further to go. Not simply the next of the list: some of it may lie beyond the limits and be shown alike, and
    // a width set by hand may lie beyond the list's end (then it stays) or short of it (then the end is one more step).
    private State? Toward(State now, int direction)
    {
        var last = Widths.Count - 1;
        for (var rung = Math.Clamp(now.Rung + direction, 0, last); rung >= 0 && rung <= last; rung += direction)
        {
            if (Clamped(Widths[rung]).CompareTo(now.Width) * direction < 0)
            {
                return At(rung);
            }
        }

        return null;
    }

    private static ValueList<BoardOffset> CheckedWidths(ValueList<BoardOffset> widths)
    {
        ArgumentNullException.ThrowIfNull(widths, nameof(widths));
        if (widths.Count == 0)
        {
            throw new ArgumentException("found no width; allowed: at least one, widest first", nameof(widths));
        }

        for (var i = 0; i < widths.Count; i++)
        {
            FixedPoint.InRange(widths[i].Boards, Target.Narrowest, Target.Widest, nameof(widths));
            if (i > 0 && widths[i] >= widths[i - 1])
            {
                throw new ArgumentException($"found the widths {widths}; allowed: widest first, all different", nameof(widths));
            }
        }

        return widths;
    }

    private static int CheckedMisses(int missesToWiden, int hitsToNarrow, int ofLast)
    {
        Guard.InRange(missesToWiden, 1, ofLast);
        return hitsToNarrow + missesToWiden > ofLast
            ? missesToWiden
            : throw new ArgumentException(
                FormattableString.Invariant($"found {hitsToNarrow} hits and {missesToWiden} misses of the last {ofLast}; ")
                    + "allowed: together more than the shots looked back on, or both could be met at once",
                nameof(missesToWiden));
    }

    // Hits: the last shots at this width, newest in the lowest bit, 1 for a hit.
    private sealed record State(BoardOffset Width, int Rung, ulong Hits, int Shots) : SizingState(Width);
}
