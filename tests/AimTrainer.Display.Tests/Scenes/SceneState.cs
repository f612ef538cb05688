using AimTrainer.Sessions;

namespace AimTrainer.Display.Tests;

/// <summary>A moment of a session that has a golden scene.</summary>
/// <param name="Name">Name of its file.</param>
/// <param name="Snapshot">The session.</param>
/// <param name="SinceShot">Seconds since the last shot.</param>
/// <param name="Cleared">Whether the coach cleared the result.</param>
internal sealed record SceneState(string Name, SessionSnapshot Snapshot, double SinceShot = 1, bool Cleared = false)
{
    public ProjectorSceneInput Projector => new() { Snapshot = Snapshot, SinceShot = TimeSpan.FromSeconds(SinceShot), Cleared = Cleared };

    public OverheadSceneInput Overhead => new() { Snapshot = Snapshot, SinceShot = TimeSpan.FromSeconds(SinceShot), Cleared = Cleared };

    public override string ToString() => Name;
}
