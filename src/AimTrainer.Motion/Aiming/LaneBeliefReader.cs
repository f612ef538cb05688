using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Reads what a fit said of a lane (<c>fit-lane --json</c>): only the numbers and their covariance; what else is in it does not matter.</summary>
public static class LaneBeliefReader
{
    /// <summary>Reads a fit, or everything that is wrong with the file.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    /// <param name="sheet">The lane's sheet, the same that was fitted.</param>
    public static FileRead<LaneBelief> Read(string fileName, ReadOnlySpan<byte> utf8, LaneSurface sheet)
    {
        var file = JsonFile.Read(fileName, utf8);
        var belief = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Part(reader, sheet) : null;
        return new FileRead<LaneBelief>(file.HasProblems ? null : belief, file.Problems);
    }

    /// <summary>Reads a fit that is part of a larger document.</summary>
    /// <param name="fit">The object; its problems go to its file.</param>
    /// <param name="sheet">The lane's sheet, the same that was fitted.</param>
    /// <returns>The belief, or null after reporting what is wrong.</returns>
    public static LaneBelief? Part(ObjectReader fit, LaneSurface sheet)
    {
        var oil = fit.Number("oilFriction", 0, LaneSurface.MostFriction);
        var dry = fit.Number("dryFriction", 0, LaneSurface.MostFriction);
        double? pattern = double.NaN;
        if (sheet.PatternFeet is not null)
        {
            var (low, high) = LaneNumbers.Allowed(LaneParameter.PatternFeet, sheet);
            pattern = fit.Number("patternFeet", low, high);
        }

        var covariance = fit.Rows("covariance", LaneNumbers.Count, LaneNumbers.Count, -1000, 1000);
        if (oil is not { } wet || dry is not { } bare || pattern is not { } feet || covariance is null)
        {
            return null;
        }

        var belief = new LaneBelief(sheet, new LaneNumbers(wet, bare, feet), covariance.ToValueList());
        try
        {
            belief.Draws(1, 0);
            return belief;
        }
        catch (ArgumentException)
        {
            fit.Report("covariance", "numbers that are no covariance", "the covariance of fit-lane --json, unchanged");
            return null;
        }
    }
}
