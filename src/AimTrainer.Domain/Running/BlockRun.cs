using System.Collections.Immutable;

namespace AimTrainer.Domain;

/// <summary>A block while it is thrown.</summary>
internal sealed record BlockRun
{
    public required ResolvedBlock Plan { get; init; }

    /// <summary>Counts blocks as they are thrown, from 0.</summary>
    public required int Run { get; init; }

    /// <summary>Which block of the drill, from 0.</summary>
    public required int Index { get; init; }

    public required int Attempt { get; init; }

    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>How long it was paused, so that minutes are minutes of throwing.</summary>
    public TimeSpan PausedFor { get; init; }

    /// <summary>One for every target of every aim, in the drill's order.</summary>
    public required ImmutableArray<TargetSlot> Slots { get; init; }

    public OrderState Order { get; init; }

    /// <summary>Aims to be thrown at before the order goes on: those of voided shots, and repeats.</summary>
    public ImmutableStack<int> ThrowAgain { get; init; } = [];

    /// <summary>Shots that count.</summary>
    public int Throws { get; init; }

    public int HeldInARow { get; init; }

    /// <summary>The number of the last shot that a summary told, or that came before the block: what waits is newer.</summary>
    public required int ToldUpTo { get; init; }

    /// <summary>What is shown: the next shot is graded against this very value.</summary>
    public Aim Shown { get; init; } = null!;

    /// <summary>For a walking line its place, from 1; else 0.</summary>
    public int Place => Plan.Block.Order is Domain.Order.Walk ? Order.Place + 1 : 0;

    public int ShownAim => ThrowAgain.IsEmpty ? Order.Aim : ThrowAgain.Peek();
}
