namespace AimTrainer.Domain.Tests;

public sealed class BallSpeedTests
{
    [Theory]
    // Source: bowlingthismonth.com "Matching-up" (time and average speed over 60 ft): 2.0 s and 2.4 s; 18 mph in 2.2727 s derived.
    [InlineData(2.0, 20.4545)]
    [InlineData(2.4, 17.0455)]
    [InlineData(2.2727, 18)]
    public void FromTimeToPins_Published_IsTheAverageSpeed(double seconds, double milesPerHour)
    {
        var speed = BallSpeed.FromTimeToPins(TimeSpan.FromSeconds(seconds));
        Assert.Equal(milesPerHour, speed.Value.Value, 0.005);
        Assert.Equal(SpeedPlace.Average, speed.Place);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(0.4)]
    public void FromTimeToPins_TooShort_Throws(double seconds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BallSpeed.FromTimeToPins(TimeSpan.FromSeconds(seconds)));
}
