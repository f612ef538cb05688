using System.Globalization;
using CsCheck;

namespace AimTrainer.Feeds.Tests;

public class IsoTimeTests
{
    [Theory]
    [InlineData("2026-03-01T18:05:09", "2026-03-01T18:05:09+00:00")]
    [InlineData("2026-03-01T18:05", "2026-03-01T18:05:00+00:00")]
    [InlineData(" 2026-03-01 18:05:09.5Z ", "2026-03-01T18:05:09.5+00:00")]
    [InlineData("2026-03-01T18:05:09,123456789-0530", "2026-03-01T18:05:09.1234567-05:30")]
    [InlineData("2024-02-29T00:00:00+14:00", "2024-02-29T00:00:00+14:00")]
    public void TryParse_Iso8601_IsThatTime(string text, string expected)
    {
        Assert.True(IsoTime.TryParse(text, out var time));
        Assert.True(time.EqualsExact(DateTimeOffset.Parse(expected, CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("2026-03-01")]
    [InlineData("01.03.2026 18:05:09")]
    [InlineData("2025-02-29T00:00:00")]
    [InlineData("2026-13-01T00:00:00")]
    [InlineData("2026-00-10T00:00:00")]
    [InlineData("0000-01-01T00:00:00")]
    [InlineData("2026-03-01T24:00:00")]
    [InlineData("2026-03-01T18:60:00")]
    [InlineData("2026-03-01T18:05:60")]
    [InlineData("2026-03-01T18:05:09.")]
    [InlineData("2026-03-01T18:05:09+15:00")]
    [InlineData("2026-03-01T18:05:09+01:00x")]
    [InlineData("0001-01-01T00:00:00+10:00")]
    [InlineData("9999-12-31T23:59:59-10:00")]
    public void TryParse_AnythingElse_IsNoTime(string text) => Assert.False(IsoTime.TryParse(text, out _));

    [Fact]
    public void TryParse_RoundTripFormat_IsTheSameTime()
    {
        Gen.DateTimeOffset.Sample(time =>
        {
            Assert.True(IsoTime.TryParse(time.ToString("O", CultureInfo.InvariantCulture), out var read));
            Assert.True(time.EqualsExact(read));
        });
    }
}
