using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>What is to be erased.</summary>
public abstract record ErasureScope
{
    private ErasureScope()
    {
    }

    /// <summary>Everything of a bowler. Refused while a session of the bowler is open on a lane.</summary>
    /// <param name="Name">The name, without regard to case.</param>
    public sealed record OfBowler(string Name) : ErasureScope;

    /// <summary>Sessions that were set up before a time; those that are open on a lane wait.</summary>
    /// <param name="At">The time.</param>
    public sealed record Before(DateTimeOffset At) : ErasureScope;

    /// <summary>Certain sessions; those that are open on a lane wait. Those that are not there count as erased.</summary>
    /// <param name="Ids">Their ids.</param>
    public sealed record Sessions(ValueList<string> Ids) : ErasureScope;

    /// <summary>Sessions that were erased before, whether they are open or not: a copy may be of the middle of a session. The files are seen to in any case.</summary>
    /// <param name="Ids">Their ids.</param>
    public sealed record Again(ValueList<string> Ids) : ErasureScope;
}
