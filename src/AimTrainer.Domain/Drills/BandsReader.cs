namespace AimTrainer.Domain;

/// <summary>Reads how crossings are graded.</summary>
internal static class BandsReader
{
    /// <summary>The block's own bands, or the usual ones when it has none; what is wrong is reported.</summary>
    public static GradeBands Read(ObjectReader block)
    {
        if (block.OptionalObjects("bands", 1, 10, "bands, tightest first") is not { } readers)
        {
            return GradeBands.Default;
        }

        var names = new NameSet("band", "block's bands");
        var bands = new List<GradeBand>();
        var sound = true;
        foreach (var reader in readers)
        {
            names.Take(reader);
            var band = Band(reader);
            sound &= band is not null && (bands.Count == 0 || Follows(reader, bands[^1], band));
            if (band is not null)
            {
                bands.Add(band);
            }
        }

        if (bands.Count > 0 && !bands[0].Award.Holds && sound)
        {
            block.Report("bands", "no band that holds the target", "\"holds\": true at the tightest band at least");
        }

        return sound && bands.Count > 0 ? new GradeBands(bands.ToValueList()) : GradeBands.Default;
    }

    private static GradeBand? Band(ObjectReader reader)
    {
        var name = reader.Text("name", 20);
        if (string.Equals(name, GradeBands.Miss.Name, StringComparison.OrdinalIgnoreCase))
        {
            reader.Report("name", FoundText.Quoted(name!), "another name: whatever lies outside every band is a miss");
        }

        var share = reader.Number("widthShare", 0, 5);
        var beyond = reader.Number("beyondBoards", 0, 20);
        var points = reader.Whole("points", 0, 100);
        var holds = reader.Flag("holds");
        reader.Done();
        return name is not null && share is { } part && beyond is { } boards && points is { } worth && holds is { } held
            ? new GradeBand(new Grade(name, (int)worth, held), (decimal)part, BoardOffset.FromBoards(boards))
            : null;
    }

    // The rules of GradeBands, each told where it is broken.
    private static bool Follows(ObjectReader reader, GradeBand tighter, GradeBand wider)
    {
        var before = tighter.Award;
        var sound = true;
        void Check(bool broken, string name, string found, string allowed)
        {
            if (broken)
            {
                reader.Report(name, found, allowed);
                sound = false;
            }
        }

        Check(
            wider.WidthShare < tighter.WidthShare,
            "widthShare",
            FormattableString.Invariant($"{wider.WidthShare} after {tighter.WidthShare}"),
            "at least that of the band before: tightest first");
        Check(wider.Beyond < tighter.Beyond, "beyondBoards", $"{wider.Beyond} after {tighter.Beyond}", "at least that of the band before: tightest first");
        Check(
            wider.Award.Points > before.Points,
            "points",
            FormattableString.Invariant($"{wider.Award.Points} after {before.Points}"),
            "no more than the band before");
        Check(wider.Award.Holds && !before.Holds, "holds", "true after false", "false: a wider band holds the target only if the one before does");
        return sound;
    }
}
