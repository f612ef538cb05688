namespace AimTrainer.Domain;

/// <summary>What ended a block.</summary>
public enum BlockEndReason
{
    /// <summary>All its shots were thrown.</summary>
    Shots,

    /// <summary>Enough aims were held in a row.</summary>
    HitsInARow,

    /// <summary>Every target became narrow enough.</summary>
    WidthReached,

    /// <summary>Its time was up.</summary>
    Minutes,

    /// <summary>The line reached the end of its walk.</summary>
    WalkDone,

    /// <summary>Every ball has its throws at every line.</summary>
    Compared,

    /// <summary>The coach went on to the next block.</summary>
    Skipped,

    /// <summary>The coach had it begun again.</summary>
    Repeated,

    /// <summary>The session was ended before the block was.</summary>
    SessionEnded,
}
