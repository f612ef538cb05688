using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Balls for people to read.</summary>
internal static class BallText
{
    public static void Print(UserConsole console, ValueList<BallRecord> balls)
    {
        var table = Consoles.Table(
            ("bowler", ColumnKind.Name), ("ball", ColumnKind.Name), ("surface", ColumnKind.Words), ("games", ColumnKind.Number), ("lb", ColumnKind.Number),
            ("RG in", ColumnKind.Number), ("diff. in", ColumnKind.Number), ("shots", ColumnKind.Number));
        foreach (var ball in balls)
        {
            var details = ball.Details;
            table.AddRow(
                new Text(details.Bowler), new Text(details.Name), new Text(details.Surface ?? "-"), new Text(Whole(details.GamesSinceSurfaceWork)),
                new Text(Output.Words.Number(details.WeightPounds)), new Text(details.RadiusOfGyration?.ToString() ?? "-"), new Text(details.Differential?.ToString() ?? "-"),
                new Text(Whole(ball.Shots)));
        }

        Consoles.Write(Consoles.For(console), table);
        foreach (var ball in balls.AsEnumerable().Where(ball => ball.Surfaces.Count > 0))
        {
            console.Out.WriteLine($"{ball.Details.Name} ({ball.Details.Bowler}):");
            foreach (var surface in ball.Surfaces)
            {
                console.Out.WriteLine($"  {surface.At.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} {Words(surface)}");
            }
        }

        console.Out.WriteLine("games: since the last work on the surface. RG: radius of gyration. -: not known.");
    }

    /// <summary>A ball in one line.</summary>
    public static string Words(BallDetails ball)
    {
        string?[] parts =
        [
            $"{ball.Bowler}'s {ball.Name}",
            ball.Surface is { } surface ? $"surface {surface}" : null,
            ball.WeightPounds is { } pounds ? $"{Output.Words.Number(pounds)} lb" : null,
            ball.RadiusOfGyration is { } radius ? $"radius of gyration {radius} in" : null,
            ball.Differential is { } differential ? $"differential {differential} in" : null,
            ball.Layout is { } layout ? $"layout {layout}" : null,
            ball.GamesSinceSurfaceWork is { } games ? $"{Output.Words.Count(games, "game")} since surface work" : null,
        ];
        return string.Join(", ", parts.Where(part => part is not null));
    }

    /// <summary>An entry of the surface history in one line.</summary>
    public static string Words(BallSurface entry)
    {
        var what = entry.Kind == BallSurfaceKind.Work
            ? $"surface work: {entry.Finish ?? "finish not said"}"
            : string.Create(CultureInfo.InvariantCulture, $"scan: {entry.Roughness} {entry.RoughnessUnit}");
        return what
            + (entry.Games is { } games ? $", after {Output.Words.Count(games, "game")}" : "")
            + (entry.Note is { } note ? $"; {note}" : "");
    }

    private static string Whole(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "-";
}
