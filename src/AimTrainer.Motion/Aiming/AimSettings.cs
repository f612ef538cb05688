namespace AimTrainer.Motion;

/// <summary>How an aim is worked out.</summary>
public sealed record AimSettings
{
    /// <summary>Where the ball must arrive.</summary>
    public PocketWindow Window { get; init; } = PocketWindow.Published;

    /// <summary>The lines that are tried.</summary>
    public AimGrid Grid { get; init; } = AimGrid.Usual;

    /// <summary>Throws at each line of the map, 50 to 100,000.</summary>
    public int MapThrows { get; init; } = 240;

    /// <summary>Throws at the best lines and at each change of scatter, on each lane that it may be, 50 to 100,000.</summary>
    public int Throws { get; init; } = 600;

    /// <summary>How many lanes are drawn from what is believed of it, 1 to 1000; one is enough where it is taken as exact.</summary>
    public int Lanes { get; init; } = 40;

    /// <summary>Where the downlane target lies, 20 to 59 ft.</summary>
    public double DownlaneFeet { get; init; } = 40;

    /// <summary>Seed of everything that is drawn.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>At most so many threads, 1 or more; the machine's own number when null. The digits are the same on any number.</summary>
    public int? Cores { get; init; }

    /// <summary>What is wrong and what is allowed, or null.</summary>
    public string? Problem() => Window.Problem() ?? Grid.Problem()
        ?? (MapThrows is < 50 or > 100_000 || Throws is < 50 or > 100_000 ? $"{MapThrows} and {Throws} throws; allowed: 50 to 100000" : null)
        ?? (Lanes is < 1 or > 1000 ? $"{Lanes} lanes; allowed: 1 to 1000" : null)
        ?? (DownlaneFeet is >= 20 and <= 59 ? null : FormattableString.Invariant($"a downlane target at {DownlaneFeet} ft; allowed: 20 to 59"))
        ?? (Cores is null or >= 1 ? null : $"{Cores} cores; allowed: 1 or more");
}
