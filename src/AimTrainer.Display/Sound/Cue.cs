namespace AimTrainer.Display;

/// <summary>A short sound with one meaning. Left and right are the bowler's, whatever the hand.</summary>
public enum Cue
{
    /// <summary>Held in the tightest of several bands that hold.</summary>
    HitBest,

    /// <summary>Held.</summary>
    Hit,

    /// <summary>Held in the widest of three or more bands that hold.</summary>
    HitJust,

    /// <summary>Not held, but in a band: on the left.</summary>
    CloseLeft,

    /// <summary>Not held, but in a band: on the right.</summary>
    CloseRight,

    /// <summary>Missed on the left.</summary>
    MissLeft,

    /// <summary>Missed on the right.</summary>
    MissRight,

    /// <summary>Not held; the side is not told.</summary>
    Missed,

    /// <summary>The shot counts, but nobody measured where it crossed.</summary>
    Unmeasured,

    /// <summary>The shot was set aside: it does not count.</summary>
    SetAside,

    /// <summary>One of several shots told together: held.</summary>
    ToldHit,

    /// <summary>One of several shots told together: not held, on the left.</summary>
    ToldLeft,

    /// <summary>One of several shots told together: not held, on the right.</summary>
    ToldRight,

    /// <summary>One of several shots told together: not held.</summary>
    ToldMissed,

    /// <summary>One of several shots told together: not measured.</summary>
    ToldUnmeasured,

    /// <summary>The target is narrower from now on.</summary>
    Narrower,

    /// <summary>The target is wider from now on.</summary>
    Wider,

    /// <summary>A block is over.</summary>
    BlockEnd,

    /// <summary>The session is over.</summary>
    SessionEnd,
}
