using CsCheck;

namespace AimTrainer.Domain.Tests;

public sealed class NameKeyTests
{
    [Fact]
    public void Of_AnyName_IsTheSameForItsOwnKeyAndWithSpacesAround() => Gen.String[Gen.Char["abcÅåÖö \t'-Zz"], 1, 12]
        .Where(name => !string.IsNullOrWhiteSpace(name))
        .Sample(name =>
        {
            var key = NameKey.Of(name);
            Assert.Equal(key, NameKey.Of(key));
            Assert.Equal(key, NameKey.Of($"  {name}\t"));
            Assert.Equal(key, NameKey.Of(name.ToUpperInvariant()));
        });

    [Theory]
    [InlineData("Ann Lee", "AnnLee")]
    [InlineData("Bo", "Bob")]
    [InlineData("Ase", "\u00c5se")]
    public void Of_DifferentNames_StayDifferent(string one, string other) => Assert.NotEqual(NameKey.Of(one), NameKey.Of(other));

    [Theory]
    [InlineData("")]
    [InlineData(" \t")]
    public void Of_NoName_Throws(string name) => Assert.Throws<ArgumentException>(() => NameKey.Of(name));
}
