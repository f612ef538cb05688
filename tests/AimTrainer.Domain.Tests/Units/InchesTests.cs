namespace AimTrainer.Domain.Tests;

public sealed class InchesTests : UnitContract<Inches>
{
    protected override IReadOnlyList<(string Name, Func<double, Inches> Make, int? Decimals)> Factories =>
    [
        (nameof(Inches.FromInches), Inches.FromInches, null),
        (nameof(Inches.FromMeasurement), Inches.FromMeasurement, 3),
    ];

    protected override double NumberOf(Inches value) => value.Value;

    [Theory]
    [InlineData(20.7505, 20.75)]
    [InlineData(20.7515, 20.752)]
    public void FromMeasurement_Tie_GoesToEven(double measured, double kept) => Assert.Equal(kept, Inches.FromMeasurement(measured).Value);
}
