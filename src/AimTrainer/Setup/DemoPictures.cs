using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Where a demo opens no windows: what they would have shown, as two pictures.</summary>
internal static class DemoPictures
{
    /// <summary>Draws the moment after the last shot.</summary>
    /// <param name="console">Lends the thread.</param>
    /// <param name="live">The session.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="noWindow">Why there are no windows, in words; null when none was asked for.</param>
    /// <returns>Where the pictures are and how to get windows, or why there are none; one line.</returns>
    public static async Task<string> WriteAsync(UserConsole console, LiveSession live, Theme theme, string? noWindow)
    {
        var how = noWindow ?? "for live windows: aimtrainer demo --overhead --projector --windowed --pace 1";
        if (live.Station.Snapshot.Setup is not { } setup || await live.Store.FindAsync(setup.SessionId, CancellationToken.None).ConfigureAwait(false) is not { } stored)
        {
            return how;
        }

        var moments = await DisplayMoments.EachShotAsync(live.Store, stored, CancellationToken.None).ToListAsync(CancellationToken.None).ConfigureAwait(false);
        var moment = moments.FindLast(moment => moment.When == "before") ?? moments[^1];
        return await console.MainThread.DoAsync(() => Draw(Path.GetDirectoryName(live.RecordFile)!, moment, theme, how)).ConfigureAwait(false);
    }

    private static string Draw(string folder, DisplayMoment moment, Theme theme, string how)
    {
        var (pictures, problem) = DisplayPictures.Open(new PictureSize(1280, 720), theme, null);
        if (pictures is null)
        {
            return $"no pictures of the displays: {problem}";
        }

        using (pictures)
        {
            var (projector, overhead) = (Path.Combine(folder, "demo-projector.png"), Path.Combine(folder, "demo-overhead.png"));
            pictures.Write(projector, DisplayKind.Projector, moment.Snapshot, TimeSpan.Zero);
            pictures.Write(overhead, DisplayKind.Overhead, moment.Snapshot, TimeSpan.Zero);
            return $"What the displays showed: {overhead} and {projector} ({how})";
        }
    }
}
