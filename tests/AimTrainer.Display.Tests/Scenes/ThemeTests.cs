using System.Text;
using CsCheck;
using SixLabors.ImageSharp.ColorSpaces;
using SixLabors.ImageSharp.ColorSpaces.Conversion;

namespace AimTrainer.Display.Tests;

/// <summary>The themes and what they must keep.</summary>
public sealed class ThemeTests
{
    public static TheoryData<string> Own() => new(ThemeLibrary.Own.Select(theme => theme.Id));

    [Fact]
    public void Own_Themes_AreFourOrMoreWithNamesOfTheirOwn()
    {
        Assert.InRange(ThemeLibrary.Own.Count, 4, 100);
        Assert.Equal(ThemeLibrary.Own.Count, ThemeLibrary.Own.Select(theme => theme.Id).Distinct().Count());
        Assert.Equal(ThemeLibrary.Own.Count, ThemeLibrary.Own.Select(theme => theme.Name).Distinct().Count());
        Assert.Null(ThemeLibrary.Find("none"));
    }

    [Theory]
    [MemberData(nameof(Own))]
    public void FaultsOf_OwnTheme_AreNone(string id) => Assert.Empty(ThemeRules.FaultsOf(ThemeLibrary.Find(id)!));

    [Theory]
    [MemberData(nameof(Own))]
    public void Own_HitAndMiss_AreFarApartForEverySight(string id)
    {
        // Worked out again here, pair by pair, so that a rule that forgets a pair is found.
        var theme = ThemeLibrary.Find(id)!;
        foreach (var vision in Enum.GetValues<Vision>())
        {
            Assert.InRange(SeenColour.Of(theme.Lane.Hit, vision).DifferenceTo(SeenColour.Of(theme.Lane.Miss, vision)), 30, 300);
            Assert.InRange(SeenColour.Of(theme.Screen.Hit, vision).DifferenceTo(SeenColour.Of(theme.Screen.Miss, vision)), 30, 300);
            Assert.InRange(SeenColour.Of(theme.Screen.Hit, vision).DifferenceTo(SeenColour.Of(theme.Screen.Target, vision)), 15, 300);
            Assert.InRange(SeenColour.Of(theme.Screen.Miss, vision).DifferenceTo(SeenColour.Of(theme.Screen.Target, vision)), 15, 300);
        }

        Assert.InRange(Luminance.Contrast(theme.Screen.Text, theme.Screen.Ground), 4.5, 21);
        Assert.InRange(Luminance.Contrast(theme.Screen.Quiet, theme.Screen.Panel), 4.5, 21);
        Assert.InRange(Luminance.Contrast(theme.Screen.Target, theme.Screen.Lane), 3, 21);
        Assert.InRange(Luminance.Contrast(theme.Lane.Next, new Colour(0, 0, 0)), 3, 21);
    }

    [Fact]
    public void FaultsOf_HitAndMissThatSomeCannotTellApart_NamesThem()
    {
        // Red and green of one lightness: the pair that people without long-wave or middle-wave cones confuse.
        var own = ThemeLibrary.Default;
        var bad = own with { Lane = own.Lane with { Hit = new Colour(120, 150, 60), Miss = new Colour(195, 110, 60) } };
        var fault = Assert.Single(ThemeRules.FaultsOf(bad).AsEnumerable(), each => each.Found.Contains("green", StringComparison.Ordinal));
        Assert.Equal(("lane", "miss"), (fault.Palette, fault.Colour));
        Assert.DoesNotContain(ThemeRules.FaultsOf(bad).AsEnumerable(), each => each.Found.Contains("usual", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, 0, 0, 255, 255, 255, 21)]
    [InlineData(255, 255, 255, 255, 255, 255, 1)]
    [InlineData(0x77, 0x77, 0x77, 255, 255, 255, 4.48)]
    [InlineData(0x76, 0x76, 0x76, 255, 255, 255, 4.54)]
    [InlineData(255, 0, 0, 255, 255, 255, 4.00)]
    public void Contrast_KnownPair_IsAsPublished(byte r1, byte g1, byte b1, byte r2, byte g2, byte b2, double ratio)
    {
        // Source: WCAG 2.1 gives 21:1 and 1:1 as the ends of the scale; #767676 as the lightest grey that passes 4.5:1 on white, #777777 as the
        // first that fails, and pure red on white at 4.00:1 are from memory of W3C's working-group examples.
        Assert.Equal(ratio, Luminance.Contrast(new Colour(r1, g1, b1), new Colour(r2, g2, b2)), 2);
        Assert.Equal(ratio, Luminance.Contrast(new Colour(r2, g2, b2), new Colour(r1, g1, b1)), 2);
    }

    [Theory]
    [InlineData(255, 255, 255, 100, 0, 0)]
    [InlineData(0, 0, 0, 0, 0, 0)]
    [InlineData(255, 0, 0, 53.24, 80.09, 67.20)]
    [InlineData(0, 255, 0, 87.73, -86.18, 83.18)]
    [InlineData(0, 0, 255, 32.30, 79.19, -107.86)]
    public void SeenColour_KnownColour_IsAsPublished(byte red, byte green, byte blue, double l, double a, double b)
    {
        // Source: the usual values of the sRGB primaries in CIE L*a*b* under D65; from memory.
        var seen = SeenColour.Of(new Colour(red, green, blue), Vision.Usual);
        Assert.Equal(l, seen.Lightness, 0.02);
        Assert.Equal(a, seen.GreenRed, 0.02);
        Assert.Equal(b, seen.BlueYellow, 0.02);
    }

    [Fact]
    public void SeenColour_AnyColour_AgreesWithAReferenceLibrary()
    {
        // Source: ImageSharp's conversion of sRGB to CIE L*a*b* under D65. Its matrices have other last digits.
        var converter = new ColorSpaceConverter(new ColorSpaceConverterOptions { TargetLabWhitePoint = Illuminants.D65 });
        Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte).Sample(
            (red, green, blue) =>
            {
                var lab = converter.ToCieLab(new Rgb(red / 255f, green / 255f, blue / 255f, RgbWorkingSpaces.SRgb));
                var seen = SeenColour.Of(new Colour(red, green, blue), Vision.Usual);
                Assert.InRange(seen.DifferenceTo(new SeenColour(lab.L, lab.A, lab.B)), 0, 0.1);
            },
            iter: 500);
    }

    [Theory]
    [InlineData(Vision.WithoutLong, 0xb87d00, 146, 128, 0)]
    [InlineData(Vision.WithoutLong, 0x3fc8f5, 175, 196, 247)]
    [InlineData(Vision.WithoutLong, 0x50b478, 180, 167, 116)]
    [InlineData(Vision.WithoutLong, 0xc83c3c, 100, 92, 59)]
    [InlineData(Vision.WithoutMiddle, 0xb87d00, 160, 142, 10)]
    [InlineData(Vision.WithoutMiddle, 0x3fc8f5, 151, 178, 245)]
    [InlineData(Vision.WithoutMiddle, 0x50b478, 166, 157, 124)]
    [InlineData(Vision.WithoutMiddle, 0xc83c3c, 135, 122, 55)]
    [InlineData(Vision.WithoutShort, 0xb87d00, 201, 109, 106)]
    [InlineData(Vision.WithoutShort, 0x6f7d99, 100, 131, 134)]
    [InlineData(Vision.WithoutShort, 0x50b478, 50, 178, 164)]
    [InlineData(Vision.WithoutShort, 0xc83c3c, 220, 12, 62)]
    public void SeenColour_Dichromat_IsWhatABrowserShows(Vision vision, int colour, byte red, byte green, byte blue)
    {
        // Source: pixels of pages of one colour in Chromium with Emulation.setEmulatedVisionDeficiency (protanopia, deuteranopia,
        // tritanopia) of its DevTools protocol, which uses the same paper; read from screenshots. Off by what 8 bits round away.
        var ours = SeenColour.Of(new Colour((byte)(colour >> 16), (byte)(colour >> 8), (byte)colour), vision);
        Assert.InRange(ours.DifferenceTo(SeenColour.Of(new Colour(red, green, blue), Vision.Usual)), 0, 1.5);
    }

    [Fact]
    public void SeenColour_Greys_AreGreyForEverySight()
    {
        // A simulation of dichromats leaves what has no colour as it is: the rows of each matrix sum to one.
        foreach (var vision in Enum.GetValues<Vision>())
        {
            foreach (var grey in new byte[] { 40, 128, 255 })
            {
                var seen = SeenColour.Of(new Colour(grey, grey, grey), vision);
                Assert.InRange(seen.DifferenceTo(SeenColour.Of(new Colour(grey, grey, grey), Vision.Usual)), 0, 0.05);
            }
        }
    }

    [Theory]
    [InlineData(Vision.WithoutLong)]
    [InlineData(Vision.WithoutMiddle)]
    public void SeenColour_RedAndGreen_LieOnOneYellowBlueAxisForDichromats(Vision vision)
    {
        // Without long- or middle-wave cones what is left of red and green is their yellow: their hues draw together.
        var (red, green) = (new Colour(200, 60, 60), new Colour(90, 130, 50));
        var usual = SeenColour.Of(red, Vision.Usual).GreenRed - SeenColour.Of(green, Vision.Usual).GreenRed;
        var seen = SeenColour.Of(red, vision).GreenRed - SeenColour.Of(green, vision).GreenRed;
        Assert.InRange(Math.Abs(seen), 0, Math.Abs(usual) / 4);
    }

    [Fact]
    public void Read_ThemeWithFaults_SaysLinePathFoundAndAllowed()
    {
        var json = Text().Replace("\"name\": \"Evening\"", "\"name\": \"\"", StringComparison.Ordinal)
            .Replace("\"rim\": \"#ffd25e\"", "\"rim\": \"yellow\"", StringComparison.Ordinal)
            .Replace("\"panel\"", "\"pannel\"", StringComparison.Ordinal);
        var read = ThemeReader.Read("mine.json", Encoding.UTF8.GetBytes(json));
        Assert.Null(read.Value);
        Assert.Equal(
            [
                "mine.json:4: $.name: found \"\"; allowed: a text of 1 to 40 characters",
                "mine.json:7: $.lane.rim: found \"yellow\"; allowed: a colour as #rrggbb, six hexadecimal digits",
                "mine.json:15: $.screen: found no \"panel\"; allowed: a text of 1 to 80 characters",
            ],
            read.Problems.Select(problem => problem.ToString()).Take(3));
        Assert.Contains("unknown key \"pannel\"", read.Problems[3].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ColoursTooAlike_SaysWhichAndWhatToDo()
    {
        var json = Text().Replace("\"quiet\": \"#a8b5c2\"", "\"quiet\": \"#334155\"", StringComparison.Ordinal);
        var read = ThemeReader.Read("mine.json", Encoding.UTF8.GetBytes(json));
        Assert.Null(read.Value);
        Assert.StartsWith("mine.json:19: $.screen.quiet: found a contrast of ", read.Problems[0].ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" with ground; allowed: 4.5 or more: make one of them lighter or darker", read.Problems[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_OwnThemeAsAUsersFile_IsThatTheme() =>
        Assert.Equal(ThemeLibrary.Default, ThemeReader.Read("mine.json", Encoding.UTF8.GetBytes(Text())).Value);

    private static string Text()
    {
        using var stream = typeof(ThemeLibrary).Assembly.GetManifestResourceStream("themes.evening.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
