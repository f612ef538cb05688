namespace AimTrainer.Domain.Tests;

public sealed class DegreesTests : UnitContract<Degrees>
{
    protected override IReadOnlyList<(string Name, Func<double, Degrees> Make, int? Decimals)> Factories =>
    [
        (nameof(Degrees.FromDegrees), Degrees.FromDegrees, null),
        (nameof(Degrees.FromMeasurement), Degrees.FromMeasurement, 3),
    ];

    protected override double NumberOf(Degrees value) => value.Value;

    [Theory]
    [InlineData(1.6245, 1.624)]
    [InlineData(1.6255, 1.626)]
    [InlineData(-1.6245, -1.624)]
    public void FromMeasurement_Tie_GoesToEven(double measured, double kept) => Assert.Equal(kept, Degrees.FromMeasurement(measured).Value);

    [Theory]
    [InlineData(1.1, -0.7, "1.8")]
    [InlineData(0.3, 0.1, "0.2")]
    public void ApartFrom_AwkwardDecimals_IsExact(double one, double other, string apart)
    {
        var expected = decimal.Parse(apart, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(expected, Degrees.FromDegrees(one).ApartFrom(Degrees.FromDegrees(other)));
        Assert.Equal(expected, Degrees.FromDegrees(other).ApartFrom(Degrees.FromDegrees(one)));
    }
}
