using AimTrainer.Domain;
using AimTrainer.Motion;

namespace AimTrainer.Web;

/// <summary>Reads the bodies of the planning calls: parts of the same shape as the files of the commands (<c>docs/motion.md</c>).</summary>
internal static class PlanReader
{
    /// <summary>Lengths of oil patterns that have an exit board.</summary>
    public const double ShortestPattern = 32, LongestPattern = 52;

    /// <summary>A body read, or the problems in it.</summary>
    /// <param name="bytes">The body.</param>
    /// <param name="read">Reads the object; null when anything is missing.</param>
    public static FileRead<T> Read<T>(byte[] bytes, Func<JsonFile, ObjectReader, T?> read)
        where T : class
    {
        var file = JsonFile.Read(RequestBody.Name, bytes);
        var value = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? read(file, reader) : null;
        return new FileRead<T>(file.HasProblems ? null : value, file.Problems);
    }

    /// <summary>The lane as it is believed to be: the pattern that is sent, or the invented one, with what a fit found of it.</summary>
    public static LaneBelief? Lane(JsonFile file, ObjectReader body)
    {
        var sheet = body.OptionalObject("lane") is { } lane ? LaneSurfaceReader.Part(file, lane)?.Surface : body.Has("lane") ? null : InventedLane.House();
        if (body.OptionalObject("fit") is not { } fit)
        {
            return sheet is null || body.Has("fit") ? null : LaneBelief.Exactly(sheet);
        }

        return sheet is null ? null : LaneBeliefReader.Part(fit, sheet);
    }

    /// <summary>The ball that is sent, or the usual one.</summary>
    public static Ball? Ball(ObjectReader body) => body.OptionalObject("ball") is { } ball ? BallReader.Part(ball) : body.Has("ball") ? null : Motion.Ball.Usual;

    /// <summary>The bowler's usual throw and scatter.</summary>
    public static AimBowler? Bowler(ObjectReader body) => body.Object("bowler") is { } bowler ? AimBowlerReader.Part(bowler) : null;

    /// <summary>The pocket window that is sent, or the published one.</summary>
    public static PocketWindow? Window(ObjectReader body)
    {
        if (body.OptionalObject("window") is not { } window)
        {
            return body.Has("window") ? null : PocketWindow.Published;
        }

        var (low, high) = (window.Number("lowBoard", 0.5, 39.5), window.Number("highBoard", 0.5, 39.5));
        var (from, to) = (window.Number("lowAngleDeg", -20, 20), window.Number("highAngleDeg", -20, 20));
        var at = window.OptionalWord("at", "contact", "60") == "60" ? WindowPlace.At60Feet : WindowPlace.Contact;
        window.Done();
        if (low is not { } near || high is not { } far || from is not { } flat || to is not { } steep)
        {
            return null;
        }

        var read = new PocketWindow(near, far, flat, steep, at);
        return Good(window, read.Problem()) ? read : null;
    }

    /// <summary>The lines to be tried, or the usual ones.</summary>
    public static AimGrid? Grid(ObjectReader body)
    {
        if (body.OptionalObject("grid") is not { } grid)
        {
            return body.Has("grid") ? null : AimGrid.Usual;
        }

        var (first, last, step) = (grid.Number("firstBoard", 0.5, 39.5), grid.Number("lastBoard", 0.5, 39.5), grid.Number("boardStep", 0.1, 10));
        var (from, to, by) = (grid.Number("firstAngleDeg", -10, 10), grid.Number("lastAngleDeg", -10, 10), grid.Number("angleStepDeg", 0.05, 5));
        grid.Done();
        if (first is not { } near || last is not { } far || step is not { } boards || from is not { } flat || to is not { } steep || by is not { } degrees)
        {
            return null;
        }

        var read = new AimGrid(near, far, boards, flat, steep, degrees);
        return Good(grid, read.Problem()) ? read : null;
    }

    private static bool Good(ObjectReader part, string? problem)
    {
        if (problem?.Split("; allowed: ") is not [var found, var allowed])
        {
            return problem is null;
        }

        part.Report(found, allowed);
        return false;
    }
}
