using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Reads oil and frictions of a lane from JSON. The format is told in <c>docs/motion.md</c>.</summary>
public static class LaneSurfaceReader
{
    private const int MostRows = 200;

    /// <summary>Reads a lane, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    /// <param name="stepMetres">As for <see cref="LaneSurface"/>.</param>
    public static FileRead<LaneSurfaceFile> Read(string fileName, ReadOnlySpan<byte> utf8, double? stepMetres = null)
    {
        var file = JsonFile.Read(fileName, utf8);
        var lane = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Part(file, reader, stepMetres) : null;
        return new FileRead<LaneSurfaceFile>(file.HasProblems ? null : lane, file.Problems);
    }

    /// <summary>Reads a lane that is part of a larger document.</summary>
    /// <param name="file">The document, which takes the problems.</param>
    /// <param name="lane">The object.</param>
    /// <param name="stepMetres">As for <see cref="LaneSurface"/>.</param>
    /// <returns>The lane, or null when anything in the document is wrong.</returns>
    public static LaneSurfaceFile? Part(JsonFile file, ObjectReader lane, double? stepMetres = null)
    {
        lane.OptionalText("name", 80);
        var arrows = lane.OptionalNumber("arrows_ft", 12, 16) ?? 15;
        var width = lane.OptionalNumber("width_in", LaneProfile.NarrowestWidth.Value, LaneProfile.WidestWidth.Value) ?? 41.5;
        var wear = lane.OptionalObject("wear") is { } worn ? WearOf(worn) : null;
        var (dry, oiled, scale) = (0.0, 0.0, 1.0);
        ValueList<OilStretch>? oil = null;
        switch (lane.ExactlyOne("mu", "rows", "passes"))
        {
            case "mu":
                dry = oiled = lane.Number("mu", 0, LaneSurface.MostFriction) ?? 0;
                oil = OilPattern.None;
                break;
            case "rows":
                (dry, oiled, scale) = Frictions(lane);
                var steps = (lane.OptionalWord("mode", "linear", "step") ?? "linear") == "step";
                oil = Rows(file, lane) is { Count: > 0 } rows ? OilPattern.FromRows(rows, steps) : null;
                break;
            case "passes":
                (dry, oiled, scale) = Frictions(lane);
                oil = Passes(lane) is { Count: > 0 } passes ? OilPattern.FromPasses(passes) : null;
                break;
            default:
                break;
        }

        var told = lane.OptionalNumber("pattern_length_ft", 0, LaneSurface.EndFeet);
        lane.Done();
        if (oil is null || file.HasProblems)
        {
            return null;
        }

        var surface = new LaneSurface(oil, dry, oiled, scale, arrows, width, stepMetres);
        var found = surface.PatternFeet ?? (surface.Oil[0].IsDry ? 0 : LaneSurface.EndFeet);
        if (told is { } length && Math.Abs(length - found) > 1e-6)
        {
            lane.Report("pattern_length_ft", Text(length), $"{Text(found)}, where the last oil ends; or leave it out");
        }

        return new LaneSurfaceFile(surface, wear);
    }

    private static (double Dry, double Oiled, double Scale) Frictions(ObjectReader lane)
    {
        var dry = lane.Number("mu_dry", 0, LaneSurface.MostFriction);
        var oiled = lane.Number("mu_oil", 0, LaneSurface.MostFriction);
        var scale = lane.Number("u0", 0.01, 1000);
        return (dry ?? 0, oiled ?? 0, scale ?? 1);
    }

    private static Wear? WearOf(ObjectReader wear)
    {
        var taken = wear.Number("taken_share", 0, 1);
        var width = wear.OptionalNumber("track_boards", 0.25, 10) ?? Wear.UsualTrackBoards;
        wear.Done();
        return taken is { } share ? new Wear(share, width) : null;
    }

    private static List<(double Feet, ValueList<double> Oil)>? Rows(JsonFile file, ObjectReader lane)
    {
        if (lane.Objects("rows", 1, MostRows, "rows, each a distance and 39 boards") is not { } readers)
        {
            return null;
        }

        var rows = new List<(double Feet, ValueList<double> Oil)>();
        foreach (var row in readers)
        {
            var feet = row.Number("x_ft", 0, LaneSurface.EndFeet);
            var oil = row.Numbers("oil", LaneProfile.BoardCount, LaneProfile.BoardCount, 0, OilPattern.MostUnits);
            row.Done();
            if (feet is { } distance && rows.Count > 0 && distance <= rows[^1].Feet)
            {
                row.Report("x_ft", Text(distance), $"rows in rising order of distance: more than {Text(rows[^1].Feet)}");
            }
            else if (feet is { } next && oil is { Count: LaneProfile.BoardCount } units)
            {
                rows.Add((next, units.Select(unit => unit.Number).ToValueList()));
            }
        }

        return file.HasProblems ? null : rows;
    }

    private static List<OilPass>? Passes(ObjectReader lane)
    {
        if (lane.Objects("passes", 1, MostRows, "passes, each from board to board and from distance to distance") is not { } readers)
        {
            return null;
        }

        var passes = new List<OilPass>();
        foreach (var pass in readers)
        {
            var from = pass.Whole("from_board", 1, LaneProfile.BoardCount);
            var to = pass.Whole("to_board", 1, LaneProfile.BoardCount);
            var start = pass.Number("start_ft", 0, LaneSurface.EndFeet);
            var end = pass.Number("end_ft", 0, LaneSurface.EndFeet);
            var units = pass.Number("units", 0, OilPattern.MostUnits);
            var endUnits = pass.OptionalNumber("end_units", 0, OilPattern.MostUnits) ?? units;
            pass.Done();
            if (to < from)
            {
                pass.Report("to_board", Text(to.Value), $"{Text(from.Value)} to {LaneProfile.BoardCount}: not before from_board");
            }
            else if (end <= start)
            {
                pass.Report("end_ft", Text(end.Value), $"more than start_ft, {Text(start.Value)}");
            }
            else if (from is { } first && to is { } last && start is { } begin && end is { } stop && units is { } amount)
            {
                passes.Add(new OilPass((int)first, (int)last, begin, stop, amount, endUnits!.Value));
            }
        }

        return passes;
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
