namespace AimTrainer.Feeds;

/// <summary>A unit in which a file may give a value.</summary>
public enum MappedUnit
{
    /// <summary>The one of our own column.</summary>
    Ours,

    /// <summary>Boards.</summary>
    Board,

    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Centimetres.</summary>
    Centimetre,

    /// <summary>Metres.</summary>
    Metre,

    /// <summary>Inches.</summary>
    Inch,

    /// <summary>Feet.</summary>
    Foot,

    /// <summary>Miles per hour.</summary>
    MilePerHour,

    /// <summary>Kilometres per hour.</summary>
    KilometrePerHour,

    /// <summary>Metres per second.</summary>
    MetrePerSecond,

    /// <summary>Degrees.</summary>
    Degree,

    /// <summary>Radians.</summary>
    Radian,

    /// <summary>Revolutions per minute.</summary>
    Rpm,
}
