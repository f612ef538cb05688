namespace AimTrainer.Motion;

/// <summary>What a fit can find out of a lane.</summary>
public enum LaneParameter
{
    /// <summary>Friction of a board under much oil.</summary>
    OilFriction,

    /// <summary>Friction of a board without oil.</summary>
    DryFriction,

    /// <summary>Where the oil ends, feet.</summary>
    PatternFeet,
}
