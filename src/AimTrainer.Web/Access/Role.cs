namespace AimTrainer.Web;

/// <summary>What somebody may do.</summary>
public enum Role
{
    /// <summary>Everything.</summary>
    Coach,

    /// <summary>Sees the bowler's view of one station, and changes nothing.</summary>
    Bowler,

    /// <summary>A sensor or program that sends shots of one station, and sees nothing else.</summary>
    Feed,

    /// <summary>A projector's calibration of one station, which coaches act in from their pages, and which sees nothing else.</summary>
    Projector,

    /// <summary>A display on another machine that shows one station, and changes nothing.</summary>
    Display,
}
