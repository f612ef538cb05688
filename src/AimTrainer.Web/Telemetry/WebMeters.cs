using System.Diagnostics.Metrics;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>What is measured of the host beside its stations; nobody listens unless an exporter is set up.</summary>
internal sealed class WebMeters
{
    private readonly Histogram<double> _delivery;

    public WebMeters(IMeterFactory factory, IReadOnlyList<Station> stations, LookingDisplays looking, IFeedWatch? feeds = null)
    {
        // The factory owns the meter, and ends it with the host.
        var meter = factory.Create(StationMeters.Name);
        _delivery = meter.CreateHistogram<double>("aimtrainer.event.delivery", "s", "From a picture being made to its last byte being handed to a reader's connection.");
        meter.CreateObservableGauge("aimtrainer.displays.connected", () => looking.Count, "{display}", "Displays elsewhere that have their stream open.");
        if (feeds is not null)
        {
            meter.CreateObservableGauge(
                "aimtrainer.feed.state",
                () => stations.Select(station => feeds.Of(station.Number) is { } feed
                    ? new Measurement<int>((int)feed.State, new KeyValuePair<string, object?>("station", station.Number))
                    : new Measurement<int>((int)FeedState.Absent, new KeyValuePair<string, object?>("station", station.Number))),
                "1",
                "A station's line feed: 0 absent, 1 connecting, 2 silent, 3 live.");
        }
    }

    /// <summary>A picture reached a reader.</summary>
    /// <param name="elapsed">Since it was made.</param>
    /// <param name="stream">Which stream: live, all, display.</param>
    public void Delivered(TimeSpan elapsed, string stream) => _delivery.Record(elapsed.TotalSeconds, new KeyValuePair<string, object?>("stream", stream));
}
