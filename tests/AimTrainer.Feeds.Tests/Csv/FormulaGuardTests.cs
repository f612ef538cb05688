using AimTrainer.Sessions;
using CsCheck;

namespace AimTrainer.Feeds.Tests;

public sealed class FormulaGuardTests
{
    // Source: OWASP, "CSV Injection": the characters a spreadsheet takes for the start of a formula, and the apostrophe before them.
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@sum(a1)", "'@sum(a1)")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("'=1", "''=1")]
    [InlineData("slipped", "slipped")]
    [InlineData("'slipped'", "'slipped'")]
    [InlineData("", "")]
    public void Guarded_Text_IsNoFormulaAndComesBack(string text, string cell)
    {
        Assert.Equal(cell, FormulaGuard.Guarded(text));
        Assert.Equal(text, FormulaGuard.Plain(cell));
    }

    [Fact]
    public void Plain_OfAnyGuardedText_IsTheText() =>
        Gen.Char["='+-@\tab"].Array[0, 6].Select(characters => new string(characters)).Sample(text => FormulaGuard.Plain(FormulaGuard.Guarded(text)) == text);
}
