namespace AimTrainer.Web;

/// <summary>What a host of the console is told at its start.</summary>
public sealed record ConsoleSettings
{
    /// <summary>The folder of the record; the user's own drills are in <c>drills</c> below it.</summary>
    public required string DataFolder { get; init; }

    /// <summary>The user's own drills.</summary>
    public string OwnDrills => Path.Combine(DataFolder, "drills");
}
