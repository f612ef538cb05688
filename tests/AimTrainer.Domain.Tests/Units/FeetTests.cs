namespace AimTrainer.Domain.Tests;

public sealed class FeetTests : UnitContract<Feet>
{
    protected override IReadOnlyList<(string Name, Func<double, Feet> Make, int? Decimals)> Factories =>
    [
        (nameof(Feet.FromFeet), Feet.FromFeet, null),
        (nameof(Feet.FromMeasurement), Feet.FromMeasurement, 3),
    ];

    protected override double NumberOf(Feet value) => value.Value;

    [Theory]
    [InlineData(15.0005, 15)]
    [InlineData(15.0015, 15.002)]
    [InlineData(-15.0005, -15)]
    public void FromMeasurement_Tie_GoesToEven(double measured, double kept) => Assert.Equal(kept, Feet.FromMeasurement(measured).Value);

    [Theory]
    [InlineData(14.9, 15.4, "0.5")]
    [InlineData(0.1, 0.3, "0.2")]
    [InlineData(-2.7, 12.3, "15")]
    [InlineData(42.5, 42.5, "0")]
    public void ApartFrom_AwkwardDecimals_IsExact(double one, double other, string apart)
    {
        var expected = decimal.Parse(apart, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(expected, Feet.FromFeet(one).ApartFrom(Feet.FromFeet(other)));
        Assert.Equal(expected, Feet.FromFeet(other).ApartFrom(Feet.FromFeet(one)));
    }
}
