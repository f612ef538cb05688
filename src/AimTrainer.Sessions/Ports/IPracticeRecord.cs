using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// What a bowler's practice adds up to, for trends and reports. Summed up where it is kept, so that neither time nor memory grows with
/// the shots of others, and memory not with the bowler's own.
/// </summary>
public interface IPracticeRecord
{
    /// <summary>Sessions and sums of a bowler's practice, or null when the record knows no such bowler.</summary>
    /// <param name="filter">Whose, and when.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task<BowlerPractice?> FindPracticeAsync(PracticeFilter filter, CancellationToken cancellationToken);

    /// <summary>The newest crossings of a bowler, newest shot first; empty when there is none.</summary>
    /// <param name="filter">Whose, and when.</param>
    /// <param name="shots">Of at most so many shots, 1 to <see cref="PracticeLimits.MostShots"/>.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of shots is outside its range.</exception>
    Task<ValueList<PracticeCrossing>> LastCrossingsAsync(PracticeFilter filter, int shots, CancellationToken cancellationToken);

    /// <summary>The lanes that sessions were thrown on, by session; a session that is not known is left out.</summary>
    /// <param name="sessionIds">Which sessions.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task<IReadOnlyDictionary<string, LaneProfile>> FindLanesAsync(IReadOnlyCollection<string> sessionIds, CancellationToken cancellationToken);
}
