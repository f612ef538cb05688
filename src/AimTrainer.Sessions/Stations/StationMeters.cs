using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace AimTrainer.Sessions;

/// <summary>
/// What is measured of stations, and the trace of a shot from the door to the disk. It costs next to nothing while nobody listens.
/// Nothing in it names a bowler: a station's number is all.
/// </summary>
public sealed class StationMeters : IDisposable
{
    /// <summary>The name of the meter and of the source of traces.</summary>
    public const string Name = "AimTrainer";

    private readonly ActivitySource _source = new(Name);
    private readonly Counter<long> _shots;
    private readonly Histogram<double> _acknowledge;

    /// <summary>Meters of a host.</summary>
    /// <param name="factory">Makes and owns the meter.</param>
    public StationMeters(IMeterFactory factory)
    {
        var meter = factory.Create(Name);
        _shots = meter.CreateCounter<long>("aimtrainer.shots", "{shot}", "Shots by what became of them: accepted, before, refused, not-kept.");
        _acknowledge = meter.CreateHistogram<double>("aimtrainer.shot.acknowledge", "s", "From a shot coming to a station's door to its acknowledgement, the disk included.");
    }

    /// <inheritdoc/>
    public void Dispose() => _source.Dispose();

    /// <summary>A shot came to the door.</summary>
    internal Activity? Shot(int station) => _source.StartActivity("shot")?.SetTag("station", station);

    /// <summary>It is being written; a part of the shot's own trace, although the station does it elsewhere.</summary>
    internal Activity? Keep(ActivityContext shot) => shot == default ? null : _source.StartActivity("keep", ActivityKind.Internal, shot);

    /// <summary>It was answered.</summary>
    internal void Answered(int station, TimeSpan elapsed, StationReply reply)
    {
        var became = reply switch
        {
            StationReply.Kept => "accepted",
            StationReply.TakenBefore => "before",
            StationReply.Refused => "refused",
            _ => "not-kept",
        };
        var tags = new TagList { { "station", station }, { "became", became } };
        _shots.Add(1, tags);
        _acknowledge.Record(elapsed.TotalSeconds, tags);
    }
}
