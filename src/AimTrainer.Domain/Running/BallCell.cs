namespace AimTrainer.Domain;

/// <summary>How far one ball has come at the aim that is thrown at.</summary>
/// <param name="Role">Its role in the comparison.</param>
/// <param name="Ball">Its name.</param>
/// <param name="Good">Good throws so far.</param>
/// <param name="GoodWanted">Good throws wanted.</param>
/// <param name="Throws">Throws so far, good or not.</param>
/// <param name="MostThrows">With so many throws it is done here.</param>
public sealed record BallCell(string Role, string Ball, int Good, int GoodWanted, int Throws, int MostThrows)
{
    /// <summary>Good throws that are still wanted; 0 when it is done here, also when it is by the number of throws.</summary>
    public int StillWanted => Throws >= MostThrows ? 0 : Math.Max(0, GoodWanted - Good);
}
