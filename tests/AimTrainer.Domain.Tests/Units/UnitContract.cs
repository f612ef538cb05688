using System.Globalization;
using System.Reflection;
using CsCheck;

namespace AimTrainer.Domain.Tests;

/// <summary>What every unit type promises; a derived class a type. <see cref="UnitTypesTests"/> says when one is missing.</summary>
/// <typeparam name="T">The unit type.</typeparam>
public abstract class UnitContract<T>
    where T : struct, IComparable<T>, IEquatable<T>
{
    /// <summary>Every public way to make a value from a number, by name, with the decimals that it keeps (null: all).</summary>
    protected abstract IReadOnlyList<(string Name, Func<double, T> Make, int? Decimals)> Factories { get; }

    /// <summary>The number that a value was made from.</summary>
    protected abstract double NumberOf(T value);

    private static double Minimum => Constant("Minimum");

    private static double Maximum => Constant("Maximum");

    private T Make(double number) => Factories[0].Make(number);

    [Fact]
    public void Factories_All_AreListedHere()
    {
        var declared = typeof(T).GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(method => method.ReturnType == typeof(T) && method.Name.StartsWith("From", StringComparison.Ordinal))
            .Select(method => method.Name).Order();
        Assert.Equal(declared, Factories.Select(factory => factory.Name).Order());
    }

    [Fact]
    public void Equals_SameAndOtherNumbers_AgreesEverywhere() =>
        TestHelper.TestEquals(Make(12.5), Make(12.5), Make(12.5001), Make(0), Make(Minimum), Make(Maximum));

    [Fact]
    public void Equals_MinusZero_IsZero()
    {
        foreach (var (_, make, _) in Factories)
        {
            TestHelper.TestEquals(make(0), make(-0.0), make(1));
            Assert.Equal(BitConverter.DoubleToInt64Bits(0), BitConverter.DoubleToInt64Bits(NumberOf(make(-0.0))));
            Assert.Equal("0", make(-0.0).ToString());
        }
    }

    [Fact]
    public void CompareTo_LowerAndHigher_AgreesWithOperators() =>
        TestHelper.TestComparison(Make(12.5), Make(12.5), Make(12.5001), Make(13), Make(Maximum));

    [Fact]
    public void CompareTo_AnyTwo_IsTheOrderOfTheirNumbers()
    {
        var number = Gen.Double[Minimum, Maximum];
        Gen.Select(number, number).Sample(pair =>
        {
            var (left, right) = (Make(pair.Item1), Make(pair.Item2));
            return Math.Sign(left.CompareTo(right)) == NumberOf(left).CompareTo(NumberOf(right))
                && Math.Sign(right.CompareTo(left)) == -Math.Sign(left.CompareTo(right))
                && left.Equals(right) == (left.CompareTo(right) == 0);
        });
    }

    [Fact]
    public void Default_Always_IsZero() => TestHelper.TestEquals(default, Make(0), Make(1));

    [Fact]
    public void Factories_AtTheLimits_AreInclusive()
    {
        foreach (var (_, make, _) in Factories)
        {
            Assert.Equal(Minimum, NumberOf(make(Minimum)));
            Assert.Equal(Maximum, NumberOf(make(Maximum)));
        }
    }

    [Fact]
    public void Factories_OutsideTheLimits_Throw()
    {
        double[] outside =
        [
            Math.BitDecrement(Minimum), Math.BitIncrement(Maximum), Minimum - 1, Maximum + 1,
            double.MinValue, double.MaxValue, double.NaN, double.PositiveInfinity, double.NegativeInfinity,
        ];
        foreach (var (_, make, _) in Factories)
        {
            foreach (var number in outside)
            {
                var thrown = Assert.Throws<ArgumentOutOfRangeException>(() => make(number));
                Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{Minimum} to {Maximum}"), thrown.Message, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Factories_AnyNumber_KeepTheirDecimals()
    {
        foreach (var (name, make, decimals) in Factories)
        {
            // Numbers with one decimal more than are kept, so that one in ten is a tie.
            var scale = (decimal)Math.Pow(10, (decimals ?? 4) + 1);
            Gen.Int[(int)((decimal)Math.Max(Minimum, -2000) * scale), (int)((decimal)Math.Min(Maximum, 2000) * scale)].Sample(count =>
            {
                var written = count / scale;
                var kept = decimals is { } places ? Math.Round(written, places, MidpointRounding.ToEven) : written;
                Assert.True((double)kept == NumberOf(make((double)written)), $"{name}({written}) gave {NumberOf(make((double)written))}");
            }, iter: 2_000);
        }
    }

    [Fact]
    public void ToString_AnyCulture_IsInvariant()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var decimalComma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            decimalComma.NumberFormat.NumberDecimalSeparator = ",";
            decimalComma.NumberFormat.NegativeSign = "minus ";
            CultureInfo.CurrentCulture = decimalComma;
            Assert.Equal("12.5", Make(12.5).ToString());
            Assert.Equal("12", Make(12).ToString());
            Assert.Equal(Minimum.ToString("0.####", CultureInfo.InvariantCulture), Make(Minimum).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ToString_RoundsToNothing_HasNoSign()
    {
        Assert.Equal("0", Make(Math.Max(Minimum, -0.00001)).ToString());
        Assert.Equal("0", Make(0.00001).ToString());
    }

    private static double Constant(string name) => (double)typeof(T).GetField(name)!.GetRawConstantValue()!;
}
