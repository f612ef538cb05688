using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What came of a shot that was sent. The same shot sent again gets the same answer.</summary>
/// <param name="Id">The sender's name for it.</param>
/// <param name="Sequence">The step of the session's log that holds it.</param>
/// <param name="Number">Its number in the session; null when it was set aside.</param>
/// <param name="Graded">The shot and its grades as they were first worked out; null when it was set aside.</param>
/// <param name="NextWidths">The widths from now on.</param>
/// <param name="SetAside">Why it was set aside; null when it was graded.</param>
public sealed record ShotAnswer(string Id, long Sequence, int? Number, GradedShot? Graded, ValueList<NextWidth> NextWidths, string? SetAside)
{
    /// <summary>The answer that a step of the log gives.</summary>
    public static ShotAnswer Of(string id, LogEntry entry)
    {
        var graded = entry.Events.AsEnumerable().OfType<SessionEvent.ShotGraded>().FirstOrDefault();
        var aside = entry.Events.AsEnumerable().OfType<SessionEvent.ShotSetAside>().FirstOrDefault();
        return new ShotAnswer(id, entry.Sequence, graded?.Shot.Number, graded?.Shot, graded?.NextWidths ?? [], aside?.Why);
    }
}
