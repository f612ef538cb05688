namespace AimTrainer.Web;

/// <summary>Who may go through to a page or a call.</summary>
public enum Door
{
    /// <summary>The coach alone; what says nothing else is this.</summary>
    Coach,

    /// <summary>The coach, and a bowler of the station that the address names.</summary>
    Bowler,

    /// <summary>The coach, and a feed of the station that the address names.</summary>
    Feed,

    /// <summary>The coach, and a projector's program of the station that the address names.</summary>
    Projector,

    /// <summary>The coach, and a display of the station that the address names.</summary>
    Display,

    /// <summary>Whoever is known.</summary>
    Known,

    /// <summary>Anybody.</summary>
    Anyone,
}
