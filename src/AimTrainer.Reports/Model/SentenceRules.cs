using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The rules of the three sentences and of what to work on (docs/reports.md). Each sentence has its interval, or says what is missing.</summary>
/// <param name="hand">For left and right.</param>
public sealed class SentenceRules(Hand hand)
{
    /// <summary>Fewest measured shots at a target before anything is said of where they go.</summary>
    public const int FewestMeasured = 10;

    /// <summary>An average this far off the mark, in boards, is worth working on.</summary>
    public const double WorthWorkingOnBoards = 0.5;

    private const double FarthestArrow = 16;

    /// <summary>Where the shots go on average.</summary>
    /// <param name="target">The target with most known crossings; null without a shot.</param>
    public ReportSentence Lean(LaneTarget? target)
    {
        if (target is null || target.Kept < FewestMeasured)
        {
            var few = $"{target?.Kept ?? 0} of {FewestMeasured} measured shots at one target";
            return Sentence(SentenceTopic.Lean, $"Where the shots go on average is not known yet: {few}.", BoundedEstimate.Unknown(few), "boards");
        }

        var miss = target.MeanForAdvice;
        var where = ReportWords.Target(target);
        var shots = ReportWords.Count(target.Kept, "shot");
        var text = miss is { Value: { } mean, Low: { } low, High: { } high }
            ? miss.DiffersFromZero == true
                ? $"Over {shots} at {where} the average is {ReportWords.Two(Math.Abs(mean))} boards to the {ReportWords.SideOf(mean, hand)} "
                    + $"(95 %: {ReportWords.Two(Math.Min(Math.Abs(low), Math.Abs(high)))} to {ReportWords.Two(Math.Max(Math.Abs(low), Math.Abs(high)))})."
                : $"Over {shots} at {where} no lean to either side shows: {ReportWords.Side(mean, hand)} on average "
                    + $"(95 %: {ReportWords.Side(low, hand)} to {ReportWords.Side(high, hand)})."
            : $"All {target.Kept} readings at {where} are the same, {ReportWords.Side(miss.Value ?? 0, hand)}: too coarse or too few to say how sure that is.";
        return Sentence(SentenceTopic.Lean, text + ReportWords.GrossSetAside(target), miss, "boards");
    }

    /// <summary>Why the shots scatter.</summary>
    public static ReportSentence Cause(ReportCauses causes)
    {
        if (causes.Shares is not { } shares || causes.Target is not { } target)
        {
            var why = causes.Why ?? "not split";
            return Sentence(SentenceTopic.Cause, $"Why they scatter is not known: {why}.", BoundedEstimate.Unknown(why), "share");
        }

        if (causes.Split < ReportCauses.Fewest)
        {
            var few = $"{causes.Split} of {ReportCauses.Fewest} shots whose laydown and angle are known";
            return Sentence(SentenceTopic.Cause, $"Why they scatter is not known yet: {few}.", BoundedEstimate.Unknown(few), "share");
        }

        var ordered = Parts(shares);
        var ((name, _, share), next) = (ordered[0], ordered[1]);
        var figure = $"{ReportWords.Percent(share.Value ?? 0)} (95 %: {ReportWords.Percent(share.Low ?? 0)} to {ReportWords.Percent(share.High ?? 0)}; "
            + $"{ReportWords.Count(causes.Split, "shot")})";
        var place = ReportWords.Place(target.Distance.Value);
        var text = Clearly(share, next.Share)
            ? $"Most of the scatter {place} comes from {name}: {figure}."
            : $"Which cause scatters the shots {place} most cannot be told yet; it may be {name}: {figure}.";
        var aside = causes.GrossSetAside > 0 ? $" {ReportWords.Count(causes.GrossSetAside, "shot")} with a gross miss set aside." : "";
        return Sentence(SentenceTopic.Cause, text + aside, share, "share");
    }

    /// <summary>Whether the bowler is getting better. The word "improved" comes from the rule of trends alone.</summary>
    public static ReportSentence Trend(ReportTrend trend)
    {
        const string unit = "logSpreadPerSession";
        if (trend.Figures is not { Rule: { } rule } figures)
        {
            var none = trend.Why ?? "no test";
            return Sentence(SentenceTopic.Trend, $"Whether practice helps is not known: {none}.", BoundedEstimate.Unknown(none), unit);
        }

        if (rule.Verdict == ImprovementVerdict.TooFew)
        {
            var few = $"{figures.Count} of {ImprovementRule.FewestSessions} sessions with a test {trend.Place}";
            return Sentence(SentenceTopic.Trend, $"Whether practice helps is not known yet: {few}.", BoundedEstimate.Unknown(few), unit);
        }

        var look = rule.Looks[^1];
        var figure = look is { Low: { } low, High: { } high }
            ? BoundedEstimate.Between(look.Slope, low, high) : BoundedEstimate.Bare(look.Slope, "all tests are equal");
        var limits = look is { Low: { } from, High: { } to }
            ? $" ({ReportWords.Confidence(rule.Confidence)}: {ReportWords.Change(from)} to {ReportWords.Change(to)})" : " (no limits)";
        var change = $"{ReportWords.Change(look.Slope)} spread a session{limits}";
        var text = rule.Verdict switch
        {
            ImprovementVerdict.Improved => $"Improved: over {look.Sessions} sessions with a test {trend.Place}, {change}.",
            ImprovementVerdict.Worse => $"The spread grew: over {look.Sessions} sessions with a test {trend.Place}, {change}.",
            _ => $"Over {look.Sessions} sessions with a test {trend.Place} neither more nor less spread can be told: {change}.",
        };
        return new ReportSentence(SentenceTopic.Trend, text, figure, unit, rule.Confidence);
    }

    /// <summary>The one thing to work on: the first rule that applies, in the order of <see cref="WorkOnRule"/>.</summary>
    public WorkOn WorkOn(LaneTarget? target, ReportCauses causes, ReportTrend trend)
    {
        if (target is null || target.Kept < FewestMeasured)
        {
            return Work(
                WorkOnRule.Measure, target, $"Measure first: {FewestMeasured} shots at one target, each with where it crossed. Then there is something to work on.");
        }

        var where = ReportWords.Target(target);
        if (target.MeanForAdvice is { DiffersFromZero: true, Value: { } mean } && Math.Abs(mean) >= WorthWorkingOnBoards)
        {
            return Work(
                WorkOnRule.Lean,
                target,
                $"Bring the middle back: at {where} the shots lie {ReportWords.Two(Math.Abs(mean))} boards too far {ReportWords.SideOf(mean, hand)}. "
                    + "Same throw, aim or feet moved.");
        }

        if (causes is { Shares: { } shares, Split: >= ReportCauses.Fewest } && Parts(shares) is var ordered && Clearly(ordered[0].Share, ordered[1].Share))
        {
            return ordered[0].Rule switch
            {
                WorkOnRule.Laydown => Work(WorkOnRule.Laydown, target, "Lay the ball down on the same board each time: most of the scatter begins there."),
                WorkOnRule.Angle => Work(WorkOnRule.Angle, target, "Send the ball the same way each time: most of the scatter is the launch angle."),
                _ => Work(WorkOnRule.Ball, target, "Throw the same ball each time, in speed and revs: most of the scatter comes beyond the straight part of the lane."),
            };
        }

        return trend.Verdict switch
        {
            ImprovementVerdict.Worse => Work(
                WorkOnRule.Grew, target, "Back to a width that suits: the spread grew. Let the target fit the shots, and ask what changed: ball, lane, tiredness, pain."),
            ImprovementVerdict.TooFew => Work(
                WorkOnRule.Test,
                target,
                $"Begin each session with the test: after {ImprovementRule.FewestSessions} sessions the record can begin to say whether practice helps "
                    + $"({trend.Figures?.Count ?? 0} so far)."),
            _ => Work(WorkOnRule.Narrow, target, $"Nothing stands out: take a narrower target at {where}."),
        };
    }

    private static WorkOn Work(WorkOnRule rule, LaneTarget? target, string text)
    {
        var (id, name) = PracticeDrills.For(rule, target is null || target.DistanceFeet <= FarthestArrow);
        return new WorkOn(rule, text, id, name);
    }

    private static List<(string Name, WorkOnRule Rule, BoundedEstimate Share)> Parts(VarianceShares shares) =>
    [
        .. new[]
        {
            ("the laydown", WorkOnRule.Laydown, shares.LaydownShare),
            ("the angle", WorkOnRule.Angle, shares.AngleShare),
            ("the ball beyond the straight part", WorkOnRule.Ball, shares.BeyondShare),
        }.OrderByDescending(part => part.Item3.Value),
    ];

    /// <summary>A cause is the largest only when its interval lies above that of the next.</summary>
    private static bool Clearly(BoundedEstimate largest, BoundedEstimate next) => largest.Low > next.High;

    private static ReportSentence Sentence(SentenceTopic topic, string text, BoundedEstimate figure, string unit) =>
        new(topic, text, figure, unit, BoundedEstimate.UsualConfidence);
}
