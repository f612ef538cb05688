namespace AimTrainer.Feeds;

/// <summary>The units of mapping files, and what they are in ours.</summary>
/// <remarks>
/// Source: the international yard and pound agreement of 1959 (Federal Register 24 FR 5348, 1 July 1959): 1 yard is 0.9144 m
/// exactly; hence 1 ft = 0.3048 m, 1 in = 0.0254 m and 1 mile (1760 yd) = 1609.344 m, all exact.
/// </remarks>
internal static class MappedUnits
{
    private const double MetresPerInch = 0.0254;
    private const double MetresPerFoot = 0.3048;
    private const double KilometresPerMile = 1.609344;

    private static readonly (string Name, MappedUnit Unit)[] Units =
    [
        ("board", MappedUnit.Board),
        ("cm", MappedUnit.Centimetre),
        ("m", MappedUnit.Metre),
        ("in", MappedUnit.Inch),
        ("mm", MappedUnit.Millimetre),
        ("ft", MappedUnit.Foot),
        ("mph", MappedUnit.MilePerHour),
        ("km/h", MappedUnit.KilometrePerHour),
        ("m/s", MappedUnit.MetrePerSecond),
        ("deg", MappedUnit.Degree),
        ("rad", MappedUnit.Radian),
        ("rpm", MappedUnit.Rpm),
    ];

    /// <summary>A unit by its name, as the mapping file writes it.</summary>
    public static MappedUnit? Find(string name)
    {
        var found = Array.Find(Units, unit => unit.Name == name);
        return found.Name is null ? null : found.Unit;
    }

    /// <summary>The name of a unit in a mapping file.</summary>
    public static string NameOf(MappedUnit unit) => Array.Find(Units, known => known.Unit == unit).Name ?? "";

    /// <summary>The names of the units that a column may have; empty for a column that is not a measure.</summary>
    public static IReadOnlyList<string> AllowedFor(ShotColumn column) => column switch
    {
        _ when ShotColumns.IsPlace(column) => ["board", "cm", "m", "in", "mm", "ft"],
        _ when ShotColumns.IsAngle(column) => ["deg", "rad"],
        ShotColumn.BreakpointFeet => ["ft", "m", "cm", "in", "mm"],
        ShotColumn.SpeedMph => ["mph", "km/h", "m/s"],
        ShotColumn.RevsRpm => ["rpm"],
        _ => [],
    };

    /// <summary>
    /// What to multiply a value in this unit by: to inches for a length across the lane (<paramref name="column"/> a place), else
    /// to the unit of our column.
    /// </summary>
    public static double Factor(ShotColumn column, MappedUnit unit)
    {
        var length = ShotColumns.IsPlace(column) ? MetresPerInch : MetresPerFoot;
        return unit switch
        {
            MappedUnit.Millimetre => 0.001 / length,
            MappedUnit.Centimetre => 0.01 / length,
            MappedUnit.Metre => 1 / length,
            MappedUnit.Inch => MetresPerInch / length,
            MappedUnit.Foot => MetresPerFoot / length,
            MappedUnit.KilometrePerHour => 1 / KilometresPerMile,
            MappedUnit.MetrePerSecond => 3.6 / KilometresPerMile,
            MappedUnit.Radian => 180 / Math.PI,
            _ => 1,
        };
    }
}
