namespace AimTrainer.Store.Tests;

/// <summary>A record in a file of its own.</summary>
internal sealed class SqliteTestRecord : TestRecord
{
    private readonly TemporaryFolder _folder = new();
    private OpenRecord _record;

    public SqliteTestRecord() => _record = new OpenRecord(_folder.Path);

    public override IRecordStore Store => _record.Store;

    public override RecordContext Tables() => _record.Tables();

    public override void Reopen()
    {
        _record.Dispose();
        _record = new OpenRecord(_folder.Path);
    }

    public override void Dispose()
    {
        _record.Dispose();
        _folder.Dispose();
    }
}
