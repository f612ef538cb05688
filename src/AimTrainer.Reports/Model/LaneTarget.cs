using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>One place on the lane and the newest shots at it. A target that moved is another place.</summary>
/// <param name="Name">What the newest shot at it calls it.</param>
/// <param name="DistanceFeet">Its distance.</param>
/// <param name="CentreBoard">Its middle.</param>
/// <param name="WidthBoards">Its width at the newest shot.</param>
/// <param name="WidthChanged">Whether it had other widths too.</param>
/// <param name="Shots">Shots at it.</param>
/// <param name="Measured">Those whose crossing is known; the figures are of these.</param>
/// <param name="Held">Those that held it, at whatever width it had.</param>
/// <param name="MeanMissBoards">Mean miss, positive inside, with 95 % limits.</param>
/// <param name="SpreadBoards">Standard deviation (n - 1) with 95 % limits.</param>
/// <param name="Ellipse">Where the next shot crosses; gross misses are left out of it.</param>
/// <param name="Crossings">The known crossings, oldest first.</param>
public sealed record LaneTarget(
    string Name,
    double DistanceFeet,
    double CentreBoard,
    double WidthBoards,
    bool WidthChanged,
    int Shots,
    int Measured,
    int Held,
    BoundedEstimate MeanMissBoards,
    BoundedEstimate SpreadBoards,
    LaneEllipse Ellipse,
    ValueList<LaneCrossing> Crossings)
{
    /// <summary>Mean miss without the gross misses, with 95 % limits; null when there is none, or more than one in ten: then none is set aside.</summary>
    public BoundedEstimate? MeanMissWithoutGrossBoards { get; init; }

    /// <summary>Standard deviation without the gross misses, with 95 % limits; null likewise.</summary>
    public BoundedEstimate? SpreadWithoutGrossBoards { get; init; }

    /// <summary>How many of the crossings are gross misses.</summary>
    public int GrossMisses => Crossings.AsEnumerable().Count(crossing => crossing.Gross);

    /// <summary>Measured shots that advice is taken from.</summary>
    internal int Kept => MeanMissWithoutGrossBoards is null ? Measured : Measured - GrossMisses;

    /// <summary>The mean miss that advice is taken from: one misread must not move it.</summary>
    internal BoundedEstimate MeanForAdvice => MeanMissWithoutGrossBoards ?? MeanMissBoards;
}
