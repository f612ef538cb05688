using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>A moment of a session that a picture is made of.</summary>
/// <param name="Name">For the file: sorts in the order of time.</param>
/// <param name="Shot">The number of the shot it is about; 0 for none.</param>
/// <param name="When">Before the shot, after it, or at the start or end of the session.</param>
/// <param name="Snapshot">The session then.</param>
/// <param name="SinceShot">Time since the last shot; null when its result is no longer shown.</param>
internal sealed record DisplayMoment(string Name, int Shot, string When, SessionSnapshot Snapshot, TimeSpan? SinceShot);
