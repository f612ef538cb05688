namespace AimTrainer.Faults.Tests;

/// <summary>Runs one session through many deaths of its process, and remembers everything that was acknowledged.</summary>
internal sealed class KilledSession(string data, string drill, GrowingShots shots, int shotsInDrill, int seed)
{
    /// <summary>Rows that wait beyond the last acknowledged shot, and new ones for each life.</summary>
    private const int Ahead = 8;

    private readonly Random _chance = new(seed);
    private readonly SortedDictionary<long, AcknowledgedStep> _acknowledged = [];
    private bool _isThere;

    /// <summary>Every acknowledged step, by its place in the log.</summary>
    public IReadOnlyDictionary<long, AcknowledgedStep> Acknowledged => _acknowledged;

    /// <summary>Times that the process was killed, by how far it had come in that life.</summary>
    public int KilledBeforeOpen { get; private set; }

    /// <inheritdoc cref="KilledBeforeOpen"/>
    public int KilledWhileShotsCame { get; private set; }

    /// <summary>Runs the session to its end.</summary>
    public async Task RunAsync(int kills, CancellationToken cancellationToken)
    {
        for (var lives = 0; lives < kills; lives++)
        {
            var outcome = await LiveAsync(kill: true, cancellationToken);
            Assert.True(outcome.ExitCode == 137, $"it was to be killed, but ended with {outcome.ExitCode}: {outcome.Text}\n{outcome.Error}");
        }

        (await LiveAsync(kill: false, cancellationToken)).Good();
    }

    private async Task<Outcome> LiveAsync(bool kill, CancellationToken cancellationToken)
    {
        var anew = !File.Exists(Path.Combine(data, "aimtrainer.db"));
        var outcome = await LiveAsync(kill, anew, cancellationToken);

        // An earlier kill may have come before the session was made: then there is nothing to go on with.
        return outcome is { ExitCode: 2, Lines: [] } && !anew && !_isThere ? await LiveAsync(kill, anew: true, cancellationToken) : outcome;
    }

    private async Task<Outcome> LiveAsync(bool kill, bool anew, CancellationToken cancellationToken)
    {
        string[] start = anew ? ["--drill", drill, "--bowler", "Fault Tester", "--seed", "7"] : ["--go-on"];
        using var program = TheProgram.Start([], ["run", "--json", .. start, "--follow", shots.File, "--station", "1", "--data", data]);

        // Some die at a random time after the start, wherever they are then; the others a moment after a shot was acknowledged.
        var shotsBeforeDeath = _chance.Next(5) == 0 ? int.MaxValue : _chance.Next(8);
        Task? death = !kill ? null
            : shotsBeforeDeath == int.MaxValue ? program.KillAfterAsync(TimeSpan.FromMilliseconds(_chance.Next(1500)))
            : null;
        var lines = new List<string>();
        var shotsTaken = 0;
        Supply(shots.Rows + Ahead);
        while (await program.NextLineAsync(cancellationToken) is { } line)
        {
            lines.Add(line);
            _isThere |= line.StartsWith("""{"opened":""", StringComparison.Ordinal);
            if (AcknowledgedStep.TryParse(line) is { } step)
            {
                Note(step);
                if (step.ShotNumber is { } number)
                {
                    shotsTaken++;
                    Supply(number + Ahead);
                }
            }

            if (kill && death is null && _isThere && shotsTaken >= shotsBeforeDeath)
            {
                death = program.KillAfterAsync(TimeSpan.FromMilliseconds(_chance.NextDouble() * 15));
            }
        }

        var outcome = await program.EndAsync(lines);
        await (death ?? Task.CompletedTask);
        if (outcome.ExitCode == 137)
        {
            KilledBeforeOpen += lines.Count == 0 ? 1 : 0;
            KilledWhileShotsCame += shotsTaken > 0 ? 1 : 0;
        }

        return outcome;
    }

    private void Note(AcknowledgedStep step) =>
        Assert.True(_acknowledged.TryAdd(step.Sequence, step), $"step {step.Sequence} was acknowledged twice");

    private void Supply(int rows)
    {
        shots.GrowTo(Math.Min(rows, shotsInDrill));
        if (shots.Rows == shotsInDrill)
        {
            shots.Finish();
        }
    }
}
