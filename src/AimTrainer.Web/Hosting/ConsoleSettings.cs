namespace AimTrainer.Web;

/// <summary>What a host of the console is told at its start.</summary>
public sealed record ConsoleSettings
{
    /// <summary>Largest body of any request, bytes; single calls take less.</summary>
    public const int MostBodyBytes = 1 << 20;

    /// <summary>The folder of the record; the user's own drills are in <c>drills</c> below it.</summary>
    public required string DataFolder { get; init; }

    /// <summary>The file or the database that holds the record, for people; null when it is in the folder.</summary>
    public string? RecordPlace { get; init; }

    /// <summary>The user's own drills.</summary>
    public string OwnDrills => Path.Combine(DataFolder, "drills");

    /// <summary>Whether it listens beyond this machine; only with a coach's passphrase.</summary>
    public bool OnNetwork { get; init; }

    /// <summary>Names that it answers to beside <c>localhost</c> and addresses in digits.</summary>
    public IReadOnlyList<string> HostNames { get; init; } = [];

    /// <summary>Shots a second that are taken from one address.</summary>
    public int ShotsASecond { get; init; } = 200;

    /// <summary>Whether each station goes on with the session that it was left with; not where somebody else begins and ends them.</summary>
    public bool GoesOnWithOpenSessions { get; init; } = true;

    /// <summary>The user's own programs.</summary>
    public string OwnPrograms => Path.Combine(DataFolder, "programs");
}
