using System.Globalization;

namespace AimTrainer.Motion;

/// <summary>
/// A symmetric ball on a point contact: bare doubles whose names carry the unit. With unequal radii of gyration take the root of
/// their mean square; that is good to about 0.6 board at the pins.
/// </summary>
public sealed record Ball
{
    /// <summary>Metres in one inch, exact.</summary>
    public const double MetresPerInch = 0.0254;

    /// <summary>Kilograms in one pound, exact.</summary>
    public const double KilogramsPerPound = 0.45359237;

    /// <summary>Lightest ball.</summary>
    public const double LightestKilograms = 2.5;

    /// <summary>Heaviest ball.</summary>
    public const double HeaviestKilograms = 7.5;

    /// <summary>Smallest ball.</summary>
    public const double SmallestRadiusMetres = 0.1;

    /// <summary>Largest ball.</summary>
    public const double LargestRadiusMetres = 0.115;

    /// <summary>Least radius of gyration.</summary>
    public const double LeastGyrationInches = 2.2;

    /// <summary>Most radius of gyration.</summary>
    public const double MostGyrationInches = 2.9;

    /// <summary>Weakest grip.</summary>
    public const double LeastGrip = 0.2;

    /// <summary>Strongest grip.</summary>
    public const double MostGrip = 3;

    /// <summary>A ball for when nobody describes one: 15 lb, 8.55 in across, radius of gyration 2.50 in.</summary>
    public static Ball Usual { get; } = new()
    {
        MassKilograms = 15 * KilogramsPerPound,
        RadiusMetres = 8.55 / 2 * MetresPerInch,
        RadiusOfGyrationMetres = 2.50 * MetresPerInch,
    };

    /// <summary>Mass, 2.5 to 7.5 kg. It scales the energy and leaves the path alone.</summary>
    public required double MassKilograms { get; init; }

    /// <summary>Radius, 0.1 to 0.115 m.</summary>
    public required double RadiusMetres { get; init; }

    /// <summary>Radius of gyration, 2.2 to 2.9 in.</summary>
    public required double RadiusOfGyrationMetres { get; init; }

    /// <summary>How strongly the cover grips: both frictions of the lane times this. 1 takes them as they are; 0.2 to 3.</summary>
    public double Grip { get; init; } = 1;

    /// <summary>Inertia as a share: (radius of gyration / radius)², 2/5 for a uniform sphere.</summary>
    public double Beta => RadiusOfGyrationMetres * RadiusOfGyrationMetres / (RadiusMetres * RadiusMetres);

    /// <summary>What is wrong with this ball and what is allowed, or null.</summary>
    public string? Problem() =>
        Outside(MassKilograms, LightestKilograms, HeaviestKilograms, "the mass in kg")
        ?? Outside(RadiusMetres, SmallestRadiusMetres, LargestRadiusMetres, "the radius in m")
        ?? Outside(RadiusOfGyrationMetres / MetresPerInch, LeastGyrationInches, MostGyrationInches, "the radius of gyration in inches")
        ?? Outside(Grip, LeastGrip, MostGrip, "the grip");

    private static string? Outside(double value, double low, double high, string what) =>
        value >= low && value <= high
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{what} is {value}; allowed: {low} to {high}");
}
