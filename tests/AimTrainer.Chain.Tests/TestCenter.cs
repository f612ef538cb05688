using AimTrainer.Domain;
using AimTrainer.Store;
using AimTrainer.Store.Sqlite;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>A center: a record in a folder, and what sends it.</summary>
internal sealed class TestCenter : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly Dictionary<string, long> _sequences = [];
    private readonly Dictionary<string, int> _shots = [];
    private DataFolder _held;

    public TestCenter(string name, string token)
    {
        (Name, Token) = (name, token);
        _held = DataFolder.Open(_folder.Path);
        Store = SqliteSessionStore.Open(_held);
    }

    public string Name { get; }

    public string Token { get; }

    public SqliteSessionStore Store { get; private set; }

    public CenterFiles Files => new(_folder.Path);

    public RecordErasure Erasing => new(Store, _folder.Path, TimeProvider.System);

    public string Folder => _folder.Path;

    public string File(string name) => _folder.File(name);

    public CenterSync Sync(IChainLink link, TimeProvider? clock = null) => new(Store, link, Files, Erasing, clock ?? TimeProvider.System);

    public HttpChainLink Link(int port) => new(new Uri($"http://127.0.0.1:{port}"), Token, TimeSpan.FromSeconds(5));

    public HttpChainLink Link(Uri address) => new(address, Token, TimeSpan.FromSeconds(5));

    /// <summary>The host ends and another begins: everything but the record is forgotten.</summary>
    public void Restart()
    {
        Store.Dispose();
        _held.Dispose();
        _held = DataFolder.Open(_folder.Path);
        Store = SqliteSessionStore.Open(_held);
    }

    /// <summary>Begins a session.</summary>
    public async Task BeginAsync(string id, string bowler, int station = 7, DateTimeOffset? at = null)
    {
        await Store.CreateAsync(Setup(id, bowler) with { At = at ?? Start, Station = station }, Drill(), Cancel);
        await Store.AppendAsync(id, Began(), Cancel);
        (_sequences[id], _shots[id]) = (1, 0);
    }

    /// <summary>One more step: mostly a shot, at times a note, a void or a correction.</summary>
    public async Task StepAsync(string id, Chance chance)
    {
        var sequence = ++_sequences[id];
        var what = chance.Next();
        LogEntry entry;
        if (what < 0.1)
        {
            entry = Noted(sequence);
        }
        else if (what < 0.15 && _shots[id] > 0)
        {
            var number = 1 + chance.Index(_shots[id]);
            entry = new(sequence, new SessionInput.VoidShot(Start, number, "slipped"), [new SessionEvent.ShotVoided(number, "slipped")]);
        }
        else if (what < 0.2 && _shots[id] > 0)
        {
            var number = 1 + chance.Index(_shots[id]);
            var after = Graded(number, Shot(9 + (2 * chance.Next())));
            entry = new(sequence, new SessionInput.CorrectShot(Start, number, after.Shot), [new SessionEvent.ShotCorrected(Graded(number, Shot()), after)]);
        }
        else
        {
            entry = Thrown(sequence, Graded(++_shots[id], Shot(8 + (4 * chance.Next()))));
        }

        await Store.AppendAsync(id, entry, Cancel);
    }

    public async Task EndAsync(string id) => await Store.AppendAsync(id, Ended(++_sequences[id]), Cancel);

    /// <summary>Every step as it lies in the record: session, sequence, input, events.</summary>
    public Task<List<(string Session, long Sequence, string Input, string Events)>> EventsAsync() => Store.AskAsync(
        record => Task.FromResult((
            from step in record.LogSteps
            join session in record.Sessions on step.SessionKey equals session.Key
            select new { session.Id, step.Sequence, step.InputJson, step.EventsJson }).AsEnumerable()
            .Select(step => (step.Id, step.Sequence, step.InputJson, step.EventsJson)).Order().ToList()),
        Cancel);

    public void Dispose()
    {
        Store.Dispose();
        _held.Dispose();
        _folder.Dispose();
    }
}
