namespace AimTrainer.Store.Tests;

/// <summary>An empty record of some database, for one test of the contract that every store keeps.</summary>
public abstract class TestRecord : IDisposable
{
    /// <summary>The store, open for writing.</summary>
    public abstract IRecordStore Store { get; }

    /// <summary>The tables, past the store.</summary>
    public abstract RecordContext Tables();

    /// <summary>Closes the store and opens it again.</summary>
    public abstract void Reopen();

    public abstract void Dispose();
}
