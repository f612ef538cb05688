using System.Net;
using System.Threading.Channels;
using AimTrainer.Sessions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Web.Tests;

/// <summary>Once a day what is too old goes, and only that; a record that is away is tried again the next day.</summary>
public sealed class RetentionServiceTests : IDisposable
{
    private static readonly DateTimeOffset Start = new(2026, 3, 7, 19, 30, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-retention-").FullName;
    private readonly FakeTimeProvider _clock = new(Start);
    private readonly LogLines _log = new();
    private readonly TestedErasure _record = new();

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task LookAsync_InTheProgramsOwnHost_ErasesWhatIsOlderAndKeepsWhatIsYounger()
    {
        var clock = new HandClock { Now = Start };
        await using var host = await TestHost.StartAsync(clock: clock);
        var retention = host.Services.GetServices<IHostedService>().OfType<RetentionService>().Single();
        await PlayAsync(host, "Old Hand");
        clock.Now += TimeSpan.FromDays(20);
        await PlayAsync(host, "Young Hand");
        clock.Now += TimeSpan.FromDays(20);

        await retention.LookAsync(Cancelled);
        Assert.Equal(["Old Hand", "Young Hand"], await BowlersAsync(host));

        Assert.Equal(HttpStatusCode.OK, (await host.Client.PostAsync("/api/people/keep", TestHost.Json("""{"months":1}"""), Cancelled)).StatusCode);
        await retention.LookAsync(Cancelled);

        Assert.Equal(["Young Hand"], await BowlersAsync(host));
        Assert.Contains("1 sessions older than 1 months were erased", host.Log.At(LogLevel.Warning), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Execute_EveryDay_AsksForWhatIsOlderByThen()
    {
        using var service = Service(keepMonths: 2);
        await service.StartAsync(Cancelled);
        Assert.Equal(["again", "before 2026-01-07 19:30"], await _record.NextAsync(2));
        for (var day = 1; day <= 3; day++)
        {
            _clock.Advance(TimeSpan.FromDays(1));
            Assert.Equal(["again", $"before 2026-01-{7 + day:00} 19:30"], await _record.NextAsync(2));
        }

        await service.StopAsync(Cancelled);
        Assert.Equal("", _log.At(LogLevel.Error));
    }

    [Fact]
    public async Task LookAsync_NothingSet_ErasesNothing()
    {
        using var service = Service(keepMonths: null);
        await service.LookAsync(Cancelled);
        Assert.Equal(0, _record.Waiting);
    }

    [Fact]
    public async Task Execute_TurnedOff_ErasesNothingFromTheNextDayOn()
    {
        var people = new PeopleRegister(_folder);
        people.KeepFor(1);
        using var service = Service(people);
        await service.StartAsync(Cancelled);
        Assert.Equal(["again", "before 2026-02-07 19:30"], await _record.NextAsync(2));
        people.KeepFor(null);
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(["again"], await _record.NextAsync(1));

        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(["again"], await _record.NextAsync(1));
        await service.StopAsync(Cancelled);
        Assert.Equal(0, _record.Waiting);
    }

    [Fact]
    public async Task Execute_RecordIsAway_SaysSoAndTriesAgainTheNextDay()
    {
        _record.Why = "the disk is full: free some space";
        using var service = Service(keepMonths: 1);
        await service.StartAsync(Cancelled);
        Assert.Equal(["again", "before 2026-02-07 19:30"], await _record.NextAsync(2));
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(["again", "before 2026-02-08 19:30"], await _record.NextAsync(2));

        _record.Why = null;
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(["again", "before 2026-02-09 19:30"], await _record.NextAsync(2));
        await service.StopAsync(Cancelled);

        Assert.Equal(2, Lines("sessions past their time were not erased; tried again tomorrow: the disk is full: free some space"));
        Assert.Equal(2, Lines("what was erased before was not seen to again; tried again tomorrow: the disk is full: free some space"));
        Assert.Equal(1, Lines("2 sessions older than 1 months were erased (erasure e1)"));
    }

    [Fact]
    public async Task LookAsync_AgreementsCannotBeRead_SaysSoAndGoesOn()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "people.json"), "what", Cancelled);
        using var service = Service(new PeopleRegister(_folder));
        await service.LookAsync(Cancelled);
        Assert.Equal(0, _record.Waiting);
        Assert.Equal(1, Lines("people.json: cannot be read"));
    }

    public void Dispose()
    {
        _log.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static async Task PlayAsync(TestHost host, string bowler)
    {
        var started = await host.Client.PostAsync("/api/stations/1/sessions", TestHost.Json($$"""{"bowler":"{{bowler}}","drill":"ten-shot-spread","hand":"right"}"""), Cancelled);
        Assert.Equal(HttpStatusCode.Created, started.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await host.Client.PostAsync("/api/stations/1/actions", TestHost.Json("""{"kind":"end"}"""), Cancelled)).StatusCode);
    }

    private static async Task<IEnumerable<string>> BowlersAsync(TestHost host)
    {
        var listed = await host.Services.GetRequiredService<ISessionStore>().ListAsync(new SessionFilter(), Cancelled);
        return listed.Select(session => session.Bowler).Order();
    }

    private RetentionService Service(int? keepMonths)
    {
        var people = new PeopleRegister(_folder);
        people.KeepFor(keepMonths);
        return Service(people);
    }

    private RetentionService Service(PeopleRegister people)
    {
        var logs = LoggerFactory.Create(builder => builder.AddProvider(_log));
        return new RetentionService(people, _clock, logs.CreateLogger<RetentionService>(), _record);
    }

    private int Lines(string words) => _log.All.Split('\n').Count(line => line.Contains(words, StringComparison.Ordinal));

    /// <summary>Its timers are the system's: a host has many short ones, and all of them would have to fire for each day.</summary>
    private sealed class HandClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => Now;
    }

    /// <summary>A record that tells what it was asked for.</summary>
    private sealed class TestedErasure : IRecordErasure
    {
        private readonly Channel<string> _asked = Channel.CreateUnbounded<string>();

        /// <summary>Why it is away; null while it is there.</summary>
        public string? Why { get; set; }

        public int Waiting => _asked.Reader.Count;

        public async Task<string[]> NextAsync(int count)
        {
            var asked = new string[count];
            for (var i = 0; i < count; i++)
            {
                asked[i] = await _asked.Reader.ReadAsync(Cancelled);
            }

            return asked;
        }

        public Task<(Erased? Erased, string? Why)> EraseBowlerAsync(string bowler, CancellationToken cancellationToken) => throw new NotSupportedException("nobody asks this here");

        public Task<Erased?> EraseBeforeAsync(DateTimeOffset before, CancellationToken cancellationToken) =>
            Answer<Erased?>(FormattableString.Invariant($"before {before:yyyy-MM-dd HH:mm}"), new Erased("e1", Start, ["s1", "s2"], []));

        public Task<int> EraseAgainAsync(CancellationToken cancellationToken) => Answer("again", 0);

        private Task<T> Answer<T>(string asked, T answer)
        {
            var away = Why;
            _asked.Writer.TryWrite(asked);
            return away is null ? Task.FromResult(answer) : Task.FromException<T>(new StoreUnavailableException(away));
        }
    }
}
