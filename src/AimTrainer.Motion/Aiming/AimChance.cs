namespace AimTrainer.Motion;

/// <summary>How often throws at a line reach the window: counted.</summary>
/// <param name="Line">The line that was meant.</param>
/// <param name="Chance">Share of the throws that reach the window, 0 to 1.</param>
/// <param name="BoardChance">Share whose board is in it, whatever the angle.</param>
/// <param name="AngleChance">Share whose angle is in it, whatever the board.</param>
/// <param name="Throws">How many throws were worked out.</param>
public readonly record struct AimChance(AimLine Line, double Chance, double BoardChance, double AngleChance, int Throws)
{
    /// <summary>Standard error of the chance that comes from counting so many throws and not more.</summary>
    /// <remarks>With Laplace's two extra throws, so that none of a few is not taken for never.</remarks>
    public double Error
    {
        get
        {
            var share = ((Chance * Throws) + 1) / (Throws + 2);
            return Math.Sqrt(share * (1 - share) / Throws);
        }
    }
}
