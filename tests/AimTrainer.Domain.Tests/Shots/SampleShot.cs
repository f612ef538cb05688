namespace AimTrainer.Domain.Tests;

/// <summary>Shots for tests.</summary>
internal static class SampleShot
{
    /// <summary>A shot with these crossings and whatever else is set.</summary>
    public static Shot Of((double Feet, double Board)[] crossings, Action<ShotReading>? more = null)
    {
        var reading = new ShotReading();
        foreach (var (feet, board) in crossings)
        {
            reading.AddCrossing(feet, board);
        }

        more?.Invoke(reading);
        var shot = reading.Check(out var problems);
        Assert.Empty(problems);
        return shot!;
    }
}
