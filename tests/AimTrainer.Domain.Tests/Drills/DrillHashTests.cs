namespace AimTrainer.Domain.Tests;

public sealed class DrillHashTests
{
    [Fact]
    public void Of_PublishedExample_IsThePublishedHash() =>
        // Source: FIPS 180-2 appendix B.1, the message "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", DrillHash.Of("abc"u8));

    [Fact]
    public void Of_OneBlankMore_IsAnotherHash() => Assert.NotEqual(DrillHash.Of("{}"u8), DrillHash.Of("{} "u8));
}
