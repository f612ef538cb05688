using System.Text;
using CsCheck;

namespace AimTrainer.Domain.Tests;

/// <summary>Whatever happens to a file, reading it ends with a drill or with what is wrong, and never with an exception.</summary>
public sealed class DrillFuzzTests
{
    private static readonly string[] Pieces =
        ["{", "}", "[", "]", "\"", ",", ":", "null", "true", "-1", "1e999", "0", "NaN", "\\u0000", "\\ud800", "//", "\uFEFF", "\0", "\r", "\"name\"", "\"walk\"", "\"fixed\"", "[[[[", "ä"];

    private static readonly string[] Values =
        ["null", "true", "{}", "[]", "\"\"", "\"arrow 2\"", "[{}]", "{\"kind\":\"walk\"}", "{\"kind\":\"ladder\"}"];

    private static readonly byte[][] Drills = [.. TestFiles.ShippedDrills().Select(name => File.ReadAllBytes(TestFiles.Drill(name)))];

    private static readonly Gen<(int Drill, (int At, int Cut, int Piece)[] Changes)> Mutations =
        Gen.Select(
            Gen.Int[0, Drills.Length - 1],
            Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[0, 12], Gen.Int[0, Pieces.Length]).Array[1, 6]);

    [Fact]
    public void Read_MutatedDrill_NeverThrowsAndSaysWhy() => Mutations.Sample(
        mutation => IsSound(Mutate(Drills[mutation.Drill], mutation.Changes)),
        iter: 20_000);

    [Fact]
    public void Read_RandomBytes_NeverThrowsAndSaysWhy() => Gen.Byte.Array[0, 300].Sample(IsSound, iter: 20_000);

    [Fact]
    public void Read_RandomValueInPlaceOfAnother_NeverThrowsAndSaysWhy()
    {
        var values = Gen.OneOf(
            Gen.Double.Select(number => number.ToString("R", System.Globalization.CultureInfo.InvariantCulture)),
            Gen.Int[-3, 40].Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            Gen.Int[0, Values.Length - 1].Select(index => Values[index]));
        Gen.Select(Gen.Int[0, Drills.Length - 1], Gen.Int[0, 1_000_000], values).Sample(
            (drill, which, value) =>
            {
                // Every number and every text of the drill is a candidate; the text stays JSON.
                var text = Encoding.UTF8.GetString(Drills[drill]);
                var places = System.Text.RegularExpressions.Regex.Matches(text, "(?<=: )(\"[^\"]*\"|[0-9.]+|true|false)");
                var place = places[which % places.Count];
                return IsSound(Encoding.UTF8.GetBytes(text[..place.Index] + value + text[(place.Index + place.Length)..]));
            },
            iter: 20_000);
    }

    private static bool IsSound(byte[] bytes)
    {
        var read = DrillReader.Read("f", bytes);
        foreach (var block in read.Value?.Blocks ?? [])
        {
            // Whatever the reader lets through can be placed, or says why not, and every sizing can start.
            DrillResolver.Resolve(block, new DrillSetting(Hand.Left, LaneProfileReader.Default, null, null));
            foreach (var target in block.Aims.SelectMany(aim => aim.Targets))
            {
                target.Sizing.Start(target.Width);
            }
        }

        return read.Value is null == read.Problems.Count > 0;
    }

    private static byte[] Mutate(byte[] drill, (int At, int Cut, int Piece)[] changes)
    {
        var bytes = drill.ToList();
        foreach (var (place, cut, piece) in changes)
        {
            var at = place % (bytes.Count + 1);
            bytes.RemoveRange(at, Math.Min(cut, bytes.Count - at));
            if (piece < Pieces.Length)
            {
                bytes.InsertRange(at, Encoding.UTF8.GetBytes(Pieces[piece]));
            }
        }

        return [.. bytes];
    }
}
