using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// What is known of the bowlers' balls. Names that differ only in capitals and blanks are one ball. When a task that writes has
/// completed, what it wrote survives a kill and a power cut.
/// </summary>
public interface IBallRecord
{
    /// <summary>Balls by bowler and name, with their surface history.</summary>
    /// <param name="bowler">Only this bowler's; null for all.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task<ValueList<BallRecord>> ListBallsAsync(string? bowler, CancellationToken cancellationToken);

    /// <summary>One ball, or null.</summary>
    Task<BallRecord?> FindBallAsync(string bowler, string name, CancellationToken cancellationToken);

    /// <summary>Keeps what is known of a ball: a new one, or in place of what was known. The name stays as it was first written.</summary>
    Task KeepBallAsync(BallDetails ball, CancellationToken cancellationToken);

    /// <summary>Adds to a ball's surface history; after work on the surface the games since it are counted from 0.</summary>
    /// <returns>Whether there is such a ball; when not, nothing was kept.</returns>
    Task<bool> AddSurfaceAsync(string bowler, string ball, BallSurface surface, CancellationToken cancellationToken);
}
