using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>What the writer needs to know of a database.</summary>
internal abstract class RecordDatabase
{
    /// <summary>What the database is called in messages: never with a password.</summary>
    public abstract string Name { get; }

    /// <summary>Opens a connection that keeps what it commits.</summary>
    public abstract StepStatements Open();

    /// <summary>Whether an exception comes from the world (disk, file, network, lock) and not from a mistake in the program.</summary>
    public abstract bool IsWorlds(Exception exception);

    /// <summary>Whether the database refused one row, and is well otherwise.</summary>
    public abstract bool IsRefusedRow(Exception exception);

    /// <summary>The exception for a person.</summary>
    /// <param name="exception">One for which <see cref="IsWorlds"/> holds.</param>
    public abstract StoreUnavailableException Unavailable(Exception exception);

    /// <summary>Whether a connection that failed once may go on being used; one that failed twice in a row is given up.</summary>
    public abstract bool KeepsConnectionAfter(Exception exception);

    /// <summary>Sees to it that what was erased is not left in some corner of the files, as far as that is the writer's to do. Whatever waits meanwhile is kept after it.</summary>
    /// <exception cref="StoreUnavailableException">The rows are gone, but not every byte of them.</exception>
    public virtual void AfterErasure(StepStatements statements)
    {
    }

    /// <summary>What is to be done between two transactions, after the waiting have been told. What goes wrong here costs nothing.</summary>
    /// <param name="statements">The connection.</param>
    /// <param name="steps">How many steps were kept since it was last done.</param>
    /// <returns>Whether something was done.</returns>
    public virtual bool Tidy(StepStatements statements, int steps) => false;
}
