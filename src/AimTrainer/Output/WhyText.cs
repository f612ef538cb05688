using AimTrainer.Analysis;
using AimTrainer.Reports;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Where misses came from, for the person at the terminal.</summary>
internal sealed class WhyText(UserConsole console)
{
    private readonly IAnsiConsole _console = Consoles.For(console);

    /// <summary>Two decimals, or a dash; what rounds to nothing has no sign.</summary>
    public static string TwoPlaces(double? value) => value is { } known ? FigureWords.Signless(known) : "-";

    /// <inheritdoc cref="FigureWords.Limited"/>
    public static string Limited(BoundedEstimate estimate) => FigureWords.Limited(estimate);

    /// <inheritdoc cref="FigureWords.Cell"/>
    public static string Cell(BoundedEstimate estimate) => FigureWords.Cell(estimate);

    /// <summary>What all shots at a line have in common.</summary>
    /// <param name="heading">What the shots were thrown at.</param>
    /// <param name="set">Where their misses came from.</param>
    public void Set(string heading, SplitSet set)
    {
        Heading(heading);
        foreach (var line in CauseWords.Of(set))
        {
            Line(line);
        }

        if (set.Split > 0)
        {
            Targets(set);
        }
    }

    /// <summary>The same shots without those of gross misses: the figures only.</summary>
    public void Without(SplitSet set)
    {
        if (set.Split == 0)
        {
            return;
        }

        Heading("The same without the shots of gross misses");
        Targets(set);
    }

    /// <summary>A line in bold after an empty one.</summary>
    public void Heading(string text)
    {
        _console.WriteLine();
        _console.MarkupLine($"[bold]{Markup.Escape(text)}[/]");
    }

    /// <summary>A line of text.</summary>
    public void Line(string text) => _console.WriteLine(text);

    private void Targets(SplitSet set)
    {
        foreach (var target in set.Targets)
        {
            OfTarget(target, target.Distance > set.StraightFeet);
        }
    }

    private void OfTarget(TargetCauses target, bool beyond)
    {
        var shares = target.SharesWithoutNoise ?? target.Shares;
        var table = Consoles.Table(
            ($"{target.Target}, {Words.Count(target.Shots, "shot")}", ColumnKind.Name),
            ("mean miss from it", ColumnKind.Number),
            ("share of the scatter", ColumnKind.Number),
            ("square boards", ColumnKind.Number));
        Row("laydown", target.LaydownBoards, shares?.LaydownShare, shares?.LaydownVariance);
        Row("angle", target.AngleBoards, shares?.AngleShare, shares?.AngleVariance);
        if (beyond)
        {
            Row("ball, beyond the straight part", target.BeyondBoards, shares?.BeyondShare, shares?.BeyondVariance);
        }

        if (shares is not null)
        {
            Shared("laydown with angle, twice the covariance", shares.TwiceLaydownAngle);
            if (beyond)
            {
                Shared("laydown with ball, twice the covariance", shares.TwiceLaydownBeyond);
                Shared("angle with ball, twice the covariance", shares.TwiceAngleBeyond);
            }

            Shared("together", shares.MissVariance);
        }

        Line("");
        Consoles.Write(_console, table);
        foreach (var line in CauseWords.Of(target, beyond))
        {
            Line(line);
        }

        void Row(string name, BoundedEstimate mean, BoundedEstimate? share, double? variance) => table.AddRow(
            name, Cell(mean), share is null ? "-" : $"{Words.Percent(share.Value)} ({Words.WholePercent(share.Low)} to {Words.WholePercent(share.High)})", TwoPlaces(variance));

        void Shared(string name, double variance) => table.AddRow(name, "", "", TwoPlaces(variance));
    }
}
