namespace AimTrainer.Domain.Tests;

public sealed class RpmTests : UnitContract<Rpm>
{
    protected override IReadOnlyList<(string Name, Func<double, Rpm> Make, int? Decimals)> Factories =>
    [
        (nameof(Rpm.FromRpm), Rpm.FromRpm, null),
        (nameof(Rpm.FromMeasurement), Rpm.FromMeasurement, 1),
    ];

    protected override double NumberOf(Rpm value) => value.Value;

    [Theory]
    [InlineData(350.25, 350.2)]
    [InlineData(350.35, 350.4)]
    public void FromMeasurement_Tie_GoesToEven(double measured, double kept) => Assert.Equal(kept, Rpm.FromMeasurement(measured).Value);

    [Theory]
    [InlineData(350.1, 330.2, "19.9")]
    public void ApartFrom_AwkwardDecimals_IsExact(double one, double other, string apart)
    {
        var expected = decimal.Parse(apart, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(expected, Rpm.FromRpm(one).ApartFrom(Rpm.FromRpm(other)));
        Assert.Equal(expected, Rpm.FromRpm(other).ApartFrom(Rpm.FromRpm(one)));
    }
}
