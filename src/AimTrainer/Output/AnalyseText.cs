using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Reports;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Figures of accuracy for the person at the terminal.</summary>
internal sealed class AnalyseText(UserConsole console)
{
    // More rows than anybody reads; the JSON has all.
    private const int MostGroups = 30;

    private readonly IAnsiConsole _console = Consoles.For(console);

    /// <summary>Everything about accuracy.</summary>
    public void Accuracy(AccuracyReport report)
    {
        Heading("Accuracy");
        Line("In boards, positive inside, with 95 % limits. Spread: standard deviation. Width used: 4.133 spreads, 96 % of the shots.");
        Targets(report.PerTarget);
        foreach (var target in report.PerTarget)
        {
            Notes(target);
        }

        if (report.Line is { } line)
        {
            OfLine(line);
        }

        foreach (var compared in report.EarlyAndLate.AsEnumerable().Where(found => found.Comparison.SpreadRatio.Value is not null))
        {
            var comparison = compared.Comparison;
            Line($"{compared.Target}, {comparison.Late} against {comparison.Early}: spread {WhyText.Limited(comparison.SpreadRatio)} times, bias changed by "
                + $"{WhyText.Limited(comparison.BiasChangeBoards)} boards{(OneIn(comparison.SpreadRatio) ? " (these shots cannot tell a change of spread)" : "")}.");
            if (comparison.SpreadRatio.Low > 1)
            {
                Line("The shots scatter more late in the session. Does anything hurt? Stop when the hand, wrist or arm does; "
                    + "this program asks and never tells anyone how much to throw.");
            }
        }

        foreach (var by in report.Groups.AsEnumerable().GroupBy(group => group.By).Where(groups => groups.Count() > 1))
        {
            Heading($"By {FigureNames.Of(by.Key)}");
            Groups(by);
        }
    }

    private static bool OneIn(BoundedEstimate ratio) => ratio.Low <= 1 && ratio.High >= 1;

    private void Targets(ValueList<TargetAccuracy> targets)
    {
        var table = Consoles.Table(
            ("target", ColumnKind.Name), ("measured", ColumnKind.Number), ("held", ColumnKind.Number), ("bias", ColumnKind.Number), ("spread", ColumnKind.Number),
            ("variable", ColumnKind.Number), ("absolute", ColumnKind.Number), ("total", ColumnKind.Number), ("width used", ColumnKind.Number));
        foreach (var target in targets)
        {
            table.AddRow(
                Markup.Escape(target.Name),
                $"{target.Measured} of {target.Shots}",
                Held(target.HitRate),
                WhyText.Cell(target.ConstantErrorBoards),
                WhyText.Cell(target.StandardDeviationBoards),
                WhyText.TwoPlaces(target.VariableErrorBoards.Value),
                WhyText.TwoPlaces(target.AbsoluteErrorBoards.Value),
                WhyText.TwoPlaces(target.TotalErrorBoards.Value),
                WhyText.TwoPlaces(target.EffectiveWidth.Boards.Value));
        }

        Consoles.Write(_console, table);
    }

    private void Notes(TargetAccuracy target)
    {
        if (target.Corrected.SpreadBoards is { Value: { } without } corrected && target.StandardDeviationBoards.Value is { } spread && spread - without >= 0.005)
        {
            Line($"{target.Name}: spread {WhyText.Limited(corrected)} boards without what the readings add ({Added(target.Corrected)}).");
        }

        if (target.Robust is { GrossMisses: > 0 and { } gross, WithoutGross: { } plain })
        {
            Line($"{target.Name}: {gross} gross {(gross == 1 ? "miss" : "misses")}; without: bias {WhyText.TwoPlaces(plain.ConstantError)}, "
                + $"variable {WhyText.TwoPlaces(plain.VariableError)}. Misread or real?");
        }

        if (target.TenShotSpread is { LatestBoards: { } latest, LatestInches: { } inches } tens)
        {
            Line($"{target.Name}: latest ten shots spread over {Words.Number(latest)} boards ({Words.Number(inches)} in), ball centre to ball centre"
                + $"{(tens.Reference is { } band ? $"; published for {band.Words}" : tens.Caveats.Count > 0 ? "; wider than every published band" : "")}.");
            if (tens.Caveats.Count > 0)
            {
                Line($"  The bands are {string.Join("; ", tens.Caveats)}.");
            }
        }
    }

    private static string Added(ReadingCorrection correction) => string.Join(", ", new[]
    {
        correction.StepBoards is { } step ? $"steps of {Words.Number(step)}" : null,
        correction.NoiseBoards is { } noise ? $"noise of {Words.Number(noise)}" : null,
    }.OfType<string>());

    private void OfLine(LineAccuracy line)
    {
        if (line.Measured == 0)
        {
            Line("The line as a whole: no shot was measured at both ends.");
            return;
        }

        Line($"The line as a whole: held {Held(line.HitRate)}; centre off by {WhyText.Limited(line.CentroidErrorBoards)}, scatter {WhyText.Limited(line.VariableErrorBoards)}, "
            + $"mean radial error {WhyText.Limited(line.MeanRadialErrorBoards)}"
            + $"{(line.MajorAxisDegrees is { } axis ? $"; scatters most at {Words.Number(axis)} degrees (0: first target only, 90: last only)" : "")}.");
    }

    private void Groups(IEnumerable<AccuracyGroup> groups)
    {
        var all = groups.ToList();
        var table = Consoles.Table(
            ("group", ColumnKind.Name), ("target", ColumnKind.Name), ("measured", ColumnKind.Number), ("held", ColumnKind.Number), ("bias", ColumnKind.Number),
            ("spread", ColumnKind.Number));
        foreach (var group in all.Take(MostGroups))
        {
            foreach (var target in group.PerTarget)
            {
                table.AddRow(
                    Markup.Escape(group.Name),
                    Markup.Escape(target.Name),
                    $"{target.Measured} of {target.Shots}",
                    Held(target.HitRate),
                    WhyText.Cell(target.ConstantErrorBoards),
                    WhyText.Cell(target.StandardDeviationBoards));
            }
        }

        Consoles.Write(_console, table);
        if (all.Count > MostGroups)
        {
            Line($"and {all.Count - MostGroups} more: --json has all");
        }
    }

    private static string Held(HitRateEstimate rate) => rate.Rate is null ? "-"
        : $"{Words.WholePercent(rate.Rate)} % ({Words.WholePercent(rate.WilsonLow)} to {Words.WholePercent(rate.WilsonHigh)})";

    private void Heading(string text)
    {
        _console.WriteLine();
        _console.MarkupLine($"[bold]{Markup.Escape(text)}[/]");
    }

    private void Line(string text) => _console.WriteLine(text);
}
