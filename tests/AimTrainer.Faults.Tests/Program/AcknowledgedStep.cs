namespace AimTrainer.Faults.Tests;

/// <summary>A line in which <c>run --json</c> says that a step is on the disk.</summary>
/// <param name="Sequence">Its place in the log.</param>
/// <param name="ShotId">The id of the shot that was graded, when one was.</param>
/// <param name="ShotNumber">Its number in the session.</param>
/// <param name="Events">What came of it, without the times of arrival, as JSON.</param>
internal sealed record AcknowledgedStep(long Sequence, string? ShotId, int? ShotNumber, string Events)
{
    /// <summary>Reads a line; null when it is another sort, or was cut off by a kill.</summary>
    public static AcknowledgedStep? TryParse(string line)
    {
        if (!line.StartsWith("""{"kept":""", StringComparison.Ordinal) || !line.EndsWith('}') || RecordText.TryParse(line) is not { } read)
        {
            return null;
        }

        var events = read["events"]!.AsArray();
        var graded = events.FirstOrDefault(happened => (string?)happened!["kind"] == "shotGraded")?["shot"];
        return new AcknowledgedStep((long)read["kept"]!, (string?)graded?["shot"]?["id"], (int?)graded?["number"], RecordText.WithoutTimes(events));
    }
}
