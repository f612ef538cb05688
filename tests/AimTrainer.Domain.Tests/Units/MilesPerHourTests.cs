namespace AimTrainer.Domain.Tests;

public sealed class MilesPerHourTests : UnitContract<MilesPerHour>
{
    protected override IReadOnlyList<(string Name, Func<double, MilesPerHour> Make, int? Decimals)> Factories =>
    [
        (nameof(MilesPerHour.FromMilesPerHour), MilesPerHour.FromMilesPerHour, null),
        (nameof(MilesPerHour.FromMeasurement), MilesPerHour.FromMeasurement, 2),
    ];

    protected override double NumberOf(MilesPerHour value) => value.Value;

    [Theory]
    [InlineData(17.125, 17.12)]
    [InlineData(17.135, 17.14)]
    public void FromMeasurement_Tie_GoesToEven(double measured, double kept) => Assert.Equal(kept, MilesPerHour.FromMeasurement(measured).Value);

    [Theory]
    [InlineData(17.1, 18.2, "1.1")]
    [InlineData(0.3, 0.1, "0.2")]
    public void ApartFrom_AwkwardDecimals_IsExact(double one, double other, string apart)
    {
        var expected = decimal.Parse(apart, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(expected, MilesPerHour.FromMilesPerHour(one).ApartFrom(MilesPerHour.FromMilesPerHour(other)));
        Assert.Equal(expected, MilesPerHour.FromMilesPerHour(other).ApartFrom(MilesPerHour.FromMilesPerHour(one)));
    }
}
