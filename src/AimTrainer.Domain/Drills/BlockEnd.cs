namespace AimTrainer.Domain;

/// <summary>When a block is over: as soon as any of these is reached. At least one of shots, minutes or a walk's end is always given.</summary>
public sealed record BlockEnd
{
    /// <summary>So many throws (measured or not; voided ones are thrown again).</summary>
    public int? Shots { get; init; }

    /// <summary>So many aims held in a row.</summary>
    public int? HitsInARow { get; init; }

    /// <summary>Every target of the block is this narrow or narrower.</summary>
    public BoardOffset? WidthReached { get; init; }

    /// <summary>So many minutes after the block's first target was shown, by the times of the inputs.</summary>
    public double? Minutes { get; init; }
}
