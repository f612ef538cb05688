namespace AimTrainer.Analysis;

/// <summary>
/// How a line was held: misses at its first and last target taken together as a point of two dimensions. A shot counts when both were measured.
/// </summary>
/// <remarks>
/// Source: Hancock, Butler &amp; Fischman 1995, Journal of Motor Behavior 27(3):241-250: subject-centroid radial error, mean radial error,
/// bivariate variable error. mean of squared radial errors = centroid² + bivariate².
/// </remarks>
/// <param name="First">The first target.</param>
/// <param name="Last">The last target.</param>
/// <param name="Shots">Shots thrown at the line.</param>
/// <param name="Measured">Those measured at both targets, n.</param>
/// <param name="HitRate">How often the whole line was held: every target of it.</param>
/// <param name="CentroidBoards">Mean miss at the first and at the last target; null when n = 0.</param>
/// <param name="CentroidErrorBoards">
/// Distance of the centroid from the middle of the line: bias of two dimensions. The limits are those of the confidence ellipse of the centroid
/// (Hotelling), the nearest and farthest point of it: careful, never too narrow. From 3 shots on.
/// </param>
/// <param name="MeanRadialErrorBoards">Mean distance of a shot from the middle of the line; limits by Student's t, approximate.</param>
/// <param name="VariableErrorBoards">
/// Scatter about the centroid, divided by n; limits by a chi-square whose degrees of freedom allow for unequal axes (Satterthwaite), approximate.
/// </param>
/// <param name="TotalRadialErrorBoards">Root mean square distance; null when n = 0.</param>
/// <param name="MajorSpreadBoards">Standard deviation (n - 1) along the direction in which the shots scatter most.</param>
/// <param name="MinorSpreadBoards">The same across it.</param>
/// <param name="MajorAxisDegrees">
/// That direction, from -90 to 90: 0 is at the first target only, 90 at the last only, 45 at both alike. Null when no direction stands out.
/// </param>
/// <param name="Correlation">Of the misses at both targets, -1 to 1; null when either does not scatter.</param>
/// <param name="Why">Why something is null; null when nothing is.</param>
public sealed record LineAccuracy(
    string First,
    string Last,
    int Shots,
    int Measured,
    HitRateEstimate HitRate,
    LineCentroid? CentroidBoards,
    BoundedEstimate CentroidErrorBoards,
    BoundedEstimate MeanRadialErrorBoards,
    BoundedEstimate VariableErrorBoards,
    double? TotalRadialErrorBoards,
    double? MajorSpreadBoards,
    double? MinorSpreadBoards,
    double? MajorAxisDegrees,
    double? Correlation,
    string? Why);
