using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>What shots say of a lane.</summary>
/// <param name="Numbers">The numbers that explain them best.</param>
/// <param name="Parameters">Each of them with its limits.</param>
/// <param name="NoiseBoards">Standard deviation of a measured board: as given, or as the shots suggest.</param>
/// <param name="NoiseGiven">Whether it was given.</param>
/// <param name="MisfitShare">Sum of squares over what the noise explains: about 1 when the model fits; with an estimated noise 1 by construction.</param>
/// <param name="Freedom">Measured values less what was fitted to them.</param>
/// <param name="Shots">Shots that were fitted.</param>
/// <param name="Covariance">
/// Of oil friction, dry friction and pattern end, row by row; 0 for what was not fitted. A weak belief is in it (0.02, 0.05 and 5 ft, one
/// standard deviation), so that what the shots cannot tell does not run away.
/// </param>
/// <param name="Misfits">Shots that stand out: their place in the list, from 0, and the root of their mean square in noises.</param>
public sealed record LaneFitResult(
    LaneNumbers Numbers,
    ValueList<FittedParameter> Parameters,
    double NoiseBoards,
    bool NoiseGiven,
    double MisfitShare,
    int Freedom,
    int Shots,
    ValueList<double> Covariance,
    ValueList<(int Shot, double Noises)> Misfits)
{
    /// <summary>Whether the shots tell everything that was asked.</summary>
    public bool Tells => Parameters.AsEnumerable().All(one => one.CannotTell is null);
}
