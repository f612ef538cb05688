using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public class ShotDigestTests
{
    /// <summary>A change of each property of a shot; a new property without a line here fails the test below.</summary>
    private static readonly Dictionary<string, Action<ShotReading>> Changes = new()
    {
        [nameof(Shot.Crossings)] = reading => reading.AddCrossing(30, 8),
        [nameof(Shot.Laydown)] = reading => reading.LaydownBoard = 18.01,
        [nameof(Shot.Breakpoint)] = reading => reading.BreakpointFeet = 41,
        [nameof(Shot.Entry)] = reading => reading.EntryBoard = null,
        [nameof(Shot.EntryAngle)] = reading => reading.EntryAngleDegrees = 4,
        [nameof(Shot.LaunchAngle)] = reading => reading.LaunchAngleDegrees = 1.001,
        [nameof(Shot.Speed)] = reading => reading.SpeedPlace = SpeedPlace.Pins,
        [nameof(Shot.Revs)] = reading => reading.RevsRpm = 300.1,
        [nameof(Shot.AxisRotation)] = reading => reading.AxisRotationDegrees = 46,
        [nameof(Shot.AxisTilt)] = reading => reading.AxisTiltDegrees = 13,
        [nameof(Shot.Pins)] = reading => reading.Pins = 8,
        [nameof(Shot.Ball)] = reading => reading.Ball = "red",
        [nameof(Shot.Note)] = reading => reading.Note = "lats",
    };

    [Fact]
    public void Of_EachValueChanged_IsAnother()
    {
        var named = typeof(Shot).GetProperties().Select(property => property.Name)
            .Where(name => name is not (nameof(Shot.Id) or nameof(Shot.Time) or nameof(Shot.Source))).ToHashSet();
        Assert.Equal(named.Order(), Changes.Keys.Order());

        var plain = ShotDigest.Of(Made(_ => { }));
        Assert.All(Changes, change =>
        {
            var changed = ShotDigest.Of(Made(change.Value));
            Assert.NotEqual(plain.Low, changed.Low);
            Assert.NotEqual(plain.High, changed.High);
        });
    }

    [Fact]
    public void Of_IdAndSource_DoNotCount() =>
        Assert.Equal(ShotDigest.Of(Made(_ => { })), ShotDigest.Of(Made(reading => (reading.Id, reading.Source) = ("x", ShotSource.Sensor))));

    private static Shot Made(Action<ShotReading> change)
    {
        var reading = new ShotReading
        {
            Time = Sample.Start,
            LaydownBoard = 18,
            BreakpointBoard = 7,
            BreakpointFeet = 40,
            EntryBoard = 17.5,
            EntryAngleDegrees = 5,
            LaunchAngleDegrees = 1,
            SpeedMilesPerHour = 17,
            SpeedPlace = SpeedPlace.Release,
            RevsRpm = 300,
            AxisRotationDegrees = 45,
            AxisTiltDegrees = 12,
            Pins = 9,
            Ball = "blue",
            Note = "late",
        };
        reading.AddCrossing(15, 12);
        change(reading);
        return reading.Check(out _)!;
    }
}
