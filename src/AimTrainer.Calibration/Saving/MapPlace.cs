namespace AimTrainer.Calibration;

/// <summary>Which projector of which lane.</summary>
/// <param name="Station">The station, 1 to 64.</param>
/// <param name="Projector">The projector's name: small letters, digits and hyphens, at most 40.</param>
public sealed record MapPlace(int Station, string Projector)
{
    /// <summary>The name of the only projector of a lane, unless it is given another.</summary>
    public const string OnlyProjector = "lane";

    /// <summary>Highest station.</summary>
    public const int MostStation = 64;

    /// <summary>Longest name of a projector.</summary>
    public const int LongestName = 40;

    /// <summary>What is wrong with it, in words; null when nothing is.</summary>
    public string? Problem => Station is < 1 or > MostStation
        ? FormattableString.Invariant($"station {Station}; allowed: 1 to {MostStation}")
        : Projector.Length is 0 or > LongestName || !Projector.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-')
            ? FormattableString.Invariant($"projector \"{Domain.FoundText.Short(Projector)}\"; allowed: small letters, digits and hyphens, at most {LongestName}")
            : null;
}
