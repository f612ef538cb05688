namespace AimTrainer.Analysis.Tests;

public sealed class CurveFittingTests
{
    [Fact]
    public void Fit_Misra1a_ReachesTheCertifiedDigits()
    {
        // Source: nls.misra1a: NIST StRD Misra1a, y = b1 (1 - exp(-b2 x)): certified values, recalled and reproduced to all 11 digits.
        // Reached: 10 digits of the parameters or more.
        double[] x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
        double[] y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
        var fit = CurveFitting.Fit(
            x, y, (rate, at) => (1 - Math.Exp(-rate * at), at * Math.Exp(-rate * at)), CurveFitting.AsymptoteRule.None, 1e-6, 1e-1);
        Digits.AtLeast(10, 2.3894212918E+02, fit.Gain);
        Digits.AtLeast(10, 5.5015643181E-04, fit.Rate);
        Digits.AtLeast(9.5, 2.7070075241E+00, fit.GainError);
        Digits.AtLeast(9.5, 7.2668688436E-06, fit.RateError);
        Digits.AtLeast(10, 1.2455138894E-01, fit.ResidualSquares);
        Digits.AtLeast(10, 1.0187876330E-01, fit.ResidualSpread);
        Assert.False(fit.RateAtLimit);
    }

    [Fact]
    public void Fit_DanWood_ReachesTheCertifiedDigits()
    {
        // Source: reference statistics.md section 4.5: NIST StRD DanWood, y = b1 x^b2, certified values, recalled and reproduced.
        double[] x = [1.309, 1.471, 1.49, 1.565, 1.611, 1.68];
        double[] y = [2.138, 3.421, 3.597, 4.34, 4.882, 5.66];
        var fit = CurveFitting.Fit(
            x, y, (rate, at) => (Math.Pow(at, rate), Math.Log(at) * Math.Pow(at, rate)), CurveFitting.AsymptoteRule.None, 0.1, 20);
        Digits.AtLeast(10, 7.6886226176E-01, fit.Gain);
        Digits.AtLeast(10, 3.8604055871E+00, fit.Rate);
        Digits.AtLeast(9.5, 1.8281973860E-02, fit.GainError);
        Digits.AtLeast(9.5, 5.1726610913E-02, fit.RateError);
        Digits.AtLeast(9.5, 4.3173084083E-03, fit.ResidualSquares);
        Digits.AtLeast(10, 3.2853114039E-02, fit.ResidualSpread);
    }
}
