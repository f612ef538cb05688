using CsCheck;

namespace AimTrainer.Analysis.Tests;

public sealed class ProportionIntervalTests
{
    [Theory]
    // Source: wilson.newcombe: Newcombe 1998, Statistics in Medicine 17:857-872, Table I (method 3), four digits.
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void Wilson_Published_AgreesToItsDigits(int hits, int shots, double low, double high) =>
        Near(low, high, ProportionInterval.Wilson(hits, shots), 5.1e-5);

    [Theory]
    // Source: prop.all: computed with SciPy 1.10.1 / NumPy 1.24.2, equal to R 4.2.2 prop.test(correct = FALSE); 95 %.
    [InlineData(0, 10, 0, 0.2775327998628892)]
    [InlineData(1, 10, 0.017876213095072896, 0.4041500267952385)]
    [InlineData(7, 10, 0.39677814746114537, 0.8922087325936989)]
    [InlineData(10, 10, 0.7224672001371107, 0.9999999999999999)]
    [InlineData(15, 20, 0.531299122381256, 0.8881382985923343)]
    [InlineData(18, 20, 0.6989663547715128, 0.9721335187862319)]
    [InlineData(4, 20, 0.08065766257979806, 0.41601743225189364)]
    [InlineData(4, 200, 0.0078044264163494685, 0.050287086905826436)]
    [InlineData(45, 60, 0.6276792992295218, 0.8422347746994333)]
    [InlineData(81, 263, 0.2552885198782742, 0.36620957698280004)]
    [InlineData(15, 148, 0.0623863995307363, 0.16048724172330803)]
    [InlineData(0, 20, 0, 0.16112515805281938)]
    [InlineData(1, 29, 0.006113214292762653, 0.17175521879320288)]
    public void Wilson_Computed_AgreesWithAnotherProgram(int hits, int shots, double low, double high) =>
        Near(low, high, ProportionInterval.Wilson(hits, shots), 1e-9);

    [Fact]
    public void Wilson_OtherConfidence_AgreesWithAnotherProgram() =>
        // Source: prop.nist7241, its Wilson part: 4 of 20 at 90 %, computed with SciPy 1.10.1 / NumPy 1.24.2; tolerance 1e-6.
        Near(0.09311801658121097, 0.37837668583536777, ProportionInterval.Wilson(4, 20, 0.9), 1e-6);

    [Theory]
    // Source: prop.all: 18, 4 of 20 and 4 of 200 published with the R package binom, read in the tests of statsmodels; the others SciPy 1.10.1;
    // 95 %, tolerance 1e-9 (largest difference measured: 1.2e-15).
    [InlineData(0, 10, 0, 0.21719626750921053)]
    [InlineData(1, 10, 0.011011673763161138, 0.3813147710666164)]
    [InlineData(7, 10, 0.39418168185132874, 0.9073054060618468)]
    [InlineData(10, 10, 0.7828037324907895, 1)]
    [InlineData(15, 20, 0.5358053707591319, 0.8976015143169549)]
    [InlineData(18, 20, 0.7161467426957476, 0.9786275119775252)]
    [InlineData(4, 20, 0.07152005247873085, 0.4082257625169254)]
    [InlineData(4, 200, 0.006787598800080365, 0.046846566966842355)]
    [InlineData(45, 60, 0.6304846949612676, 0.8460593150330576)]
    [InlineData(81, 263, 0.2545219349910236, 0.3656474991740823)]
    [InlineData(15, 148, 0.06044851700929642, 0.15764314347874112)]
    [InlineData(0, 20, 0, 0.11663898290487539)]
    [InlineData(1, 29, 0.0037461736490570752, 0.15007768600223173)]
    public void Jeffreys_ComputedAndPublished_Agrees(int hits, int shots, double low, double high) =>
        Near(low, high, ProportionInterval.Jeffreys(hits, shots), 1e-9);

    [Fact]
    public void Jeffreys_OtherConfidence_AgreesWithAnotherProgram() =>
        // Source: prop.nist7241, its Jeffreys part: 4 of 20 at 90 %, SciPy 1.10.1; tolerance 1e-6.
        Near(0.08733503283931829, 0.3727392849964323, ProportionInterval.Jeffreys(4, 20, 0.9), 1e-6);

    [Fact]
    public void Jeffreys_MillionShots_IsThereAndNarrow()
    {
        // By hand: p = 1/2, one standard error is 0.0005, so the limits are 0.00098 to either side.
        var interval = ProportionInterval.Jeffreys(500_000, 1_000_000)!.Value;
        Assert.Equal(0.49902, interval.Low, 1e-5);
        Assert.Equal(0.50098, interval.High, 1e-5);
    }

    [Fact]
    public void Jeffreys_NoShot_IsUnknown() => Assert.Null(ProportionInterval.Jeffreys(0, 0));

    [Fact]
    public void Wilson_NoShot_IsUnknown() => Assert.Null(ProportionInterval.Wilson(0, 0));

    [Fact]
    public void Wilson_NoHitOrNoMiss_EndsExactly()
    {
        for (var shots = 1; shots <= 2_000; shots++)
        {
            Assert.Equal(0.0, ProportionInterval.Wilson(0, shots)!.Value.Low);
            Assert.Equal(1.0, ProportionInterval.Wilson(shots, shots)!.Value.High);
        }
    }

    [Fact]
    public void Wilson_AnyShots_HoldsTheRateAndIsMirroredForMisses() =>
        Gen.Select(Gen.Int[1, 1_000_000], Gen.Double[0, 1], Gen.Double[0.5, 0.999]).Sample((shots, share, confidence) =>
        {
            var hits = (int)(share * shots);
            var interval = ProportionInterval.Wilson(hits, shots, confidence)!.Value;
            var misses = ProportionInterval.Wilson(shots - hits, shots, confidence)!.Value;
            var rate = (double)hits / shots;
            Assert.True(interval.Low >= 0 && interval.Low <= rate && rate <= interval.High && interval.High <= 1);
            Assert.Equal(interval.Low, 1 - misses.High, 1e-12);
            Assert.Equal(interval.High, 1 - misses.Low, 1e-12);
        });

    [Theory]
    [InlineData(-1, 10, 0.95)]
    [InlineData(11, 10, 0.95)]
    [InlineData(0, -1, 0.95)]
    [InlineData(5, 10, 0)]
    [InlineData(5, 10, 1)]
    [InlineData(5, 10, double.NaN)]
    public void Wilson_OutsideTheLimits_Throws(int hits, int shots, double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ProportionInterval.Wilson(hits, shots, confidence));

    private static void Near(double low, double high, ProportionInterval? found, double tolerance)
    {
        Assert.Equal(low, found!.Value.Low, tolerance);
        Assert.Equal(high, found.Value.High, tolerance);
    }
}
