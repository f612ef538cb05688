using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>The hit rate with its interval, when that gives nothing away that is withheld.</summary>
internal static class RateGroup
{
    public static void Add(ScreenInk ink, FigurePanel panel, SessionSnapshot snapshot)
    {
        panel.Ground(ink);
        var over = snapshot.Finished is not null && (snapshot.Block is null || snapshot.Throws == 0);
        var (block, summary) = over ? (snapshot.Finished!.Block, snapshot.Finished.Summary) : (snapshot.Block, snapshot.Summary);
        if (block is null || summary is null)
        {
            panel.Words(ink, "Hit rate", "after the first shot");
            return;
        }

        if (!(over ? TellsAll.HoldsAtEnd(block.Feedback) : TellsAll.Holds(block.Feedback)))
        {
            panel.Words(ink, "Hit rate", over ? "withheld until your coach tells" : $"withheld {Until(block.Feedback)}");
            return;
        }

        // A throw at a line is one throw: its crossings hang together, and counted apart they would make the interval too narrow.
        var (hits, shots) = (summary.Held, summary.Known);
        var what = block.Aims.AsEnumerable().All(aim => aim.Targets.Count == 1) ? " hit" : " lines held";
        if (ProportionInterval.Wilson(hits, shots) is not { } interval)
        {
            panel.Words(ink, "Hit rate", over ? "nothing was measured" : "after the first shot");
            return;
        }

        panel.Main(ink, 0, ink.Palette.Text, $"{SceneWords.Percent((double)hits / shots)} %");
        var of = $"{SceneWords.Whole(hits)} of {SceneWords.Whole(shots)}";
        var where = over ? $" in block {SceneWords.Whole(snapshot.Finished!.Number)}" : "";
        var (low, high) = (SceneWords.Percent(interval.Low), SceneWords.Percent(interval.High));
        panel.Below(
            ink,
            $"{of}{what}{where}, likely {low} to {high} %",
            $"{of}{where}, {low} to {high} %",
            $"{of}, likely {low} to {high} %",
            $"{of}, {low} to {high} %",
            $"{of}, {low}-{high} %");
        Interval(ink, panel, (double)hits / shots, interval);
    }

    private static string Until(Feedback feedback) => feedback.When is FeedbackWhen.None ? SceneWords.WithheldUntil(feedback) : "until the block ends";

    /// <summary>The interval as a bar on a line from 0 to 100 %, where there is room beside the figure.</summary>
    private static void Interval(ScreenInk ink, FigurePanel panel, double rate, ProportionInterval interval)
    {
        const double FigureRoom = 0.62, Thick = 0.012;
        var (left, right) = (panel.InnerLeft + FigureRoom, panel.Right - (2 * FigurePanel.Padding));
        if (right - left < 0.2)
        {
            return;
        }

        var y = panel.MainBaseline - (ScreenInk.Main / 2);
        ink.Add(new Shape<ScreenPoint>.Stroke([new ScreenPoint(left, y), new ScreenPoint(right, y)], 0.004, ink.Palette.Quiet));
        ink.Box(X(interval.Low), y - Thick, X(interval.High), y + Thick, ink.Palette.Hit with { Alpha = 150 });
        ink.Box(X(rate) - 0.004, y - (2.5 * Thick), X(rate) + 0.004, y + (2.5 * Thick), ink.Palette.Text);

        double X(double share) => left + ((right - left) * share);
    }
}
