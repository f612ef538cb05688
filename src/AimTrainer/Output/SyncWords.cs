using System.Globalization;
using AimTrainer.Store;

namespace AimTrainer.Output;

/// <summary>How the sending to a chain stands, for people.</summary>
internal static class SyncWords
{
    public static IEnumerable<string> Of(SyncState state)
    {
        yield return $"chain: {state.Chain}{(state.Center is { } name ? $", which calls this center {name}" : "")}";
        yield return state.WaitingSteps switch
        {
            null => "waiting: not known, since the chain was not reached",
            0 => "waiting: nothing",
            { } steps => $"waiting: {Words.Count(steps, "step")} of {Words.Count(state.WaitingSessions ?? 0, "session")}"
                + (state.WaitingSince is { } since ? $", the oldest since {Time(since)}" : ""),
        };
        if (state.ErasuresWaiting > 0)
        {
            yield return $"waiting: {Words.Count(state.ErasuresWaiting, "erasure")} that the chain has not confirmed";
        }

        yield return state.ReachedAt is { } reached ? $"last reached: {Time(reached)}" : "last reached: never";
        foreach (var session in state.SetAside)
        {
            yield return $"not taken: {session}";
        }

        if (state.Error is { } error)
        {
            yield return $"{Time(state.ErrorAt ?? DateTimeOffset.UnixEpoch)}: {error}";
        }
    }

    private static string Time(DateTimeOffset moment) => moment.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture) + " UTC";
}
