namespace AimTrainer.Sessions;

/// <summary>Tells how the line feeds of the stations stand.</summary>
public interface IFeedWatch
{
    /// <summary>A station's feed; null when this program takes no lines.</summary>
    FeedStatus? Of(int station);
}
