namespace AimTrainer.Web;

/// <summary>Looks at the place that holds the record, where that is more than a file in the data folder.</summary>
public interface IRecordCheck
{
    /// <summary>Looks. What is wrong is in the answer, with what to do.</summary>
    /// <param name="cancellationToken">Ends it.</param>
    Task<IReadOnlyList<HealthCheck>> LookAsync(CancellationToken cancellationToken);
}
