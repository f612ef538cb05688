using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// The only way to the word "improved": the Theil-Sen limits of the log spread of fixed-width test blocks leave out zero at 99 %, with
/// at least eight sessions, looked at every fourth session only.
/// </summary>
/// <remarks>
/// A 95 % interval that is looked at after every session is wrong for 38 % of bowlers within a year. This rule tells about 3 % of
/// bowlers who do not change, within 48 sessions, that they improved. Between looks the word stays what it was at the last one. Where
/// a bowler has several kinds of test, the 1 % is shared among them, else each would be a chance of its own to be wrong.
/// Source: reference statistics.md sections 4.8 and 10.
/// </remarks>
/// <param name="Confidence">Of the limits: 0.99, or nearer to 1 where several kinds of test share the 1 %.</param>
/// <param name="Looks">All looks so far, oldest first.</param>
/// <param name="NextLookAt">How many sessions the next look needs.</param>
public sealed record ImprovementRule(double Confidence, ValueList<ImprovementLook> Looks, int NextLookAt)
{
    /// <summary>Fewest sessions for a look.</summary>
    public const int FewestSessions = 8;

    /// <summary>A look after every so many sessions.</summary>
    public const int Every = 4;

    private const double MostError = 0.01;

    /// <summary>What the newest look says.</summary>
    public ImprovementVerdict Verdict => Looks.Count > 0 ? Looks[^1].Verdict : ImprovementVerdict.TooFew;

    /// <summary>The looks at a series of log spreads.</summary>
    /// <param name="logSpreads">One a session, in order, all of one kind of test.</param>
    /// <param name="kinds">How many kinds of test of this bowler are looked at, 1 or more.</param>
    /// <exception cref="ArgumentException">A number is not finite, the sessions do not grow, or there are too many.</exception>
    public static ImprovementRule Of(IReadOnlyList<TrendPoint> logSpreads, int kinds = 1)
    {
        var confidence = ConfidenceFor(kinds);
        var looks = new List<ImprovementLook>();
        for (var count = FewestSessions; count <= logSpreads.Count; count += Every)
        {
            var line = TheilSen.Of([.. logSpreads.Take(count)], confidence)!;
            looks.Add(new ImprovementLook(count, line.Slope, line.Low, line.High, line.Side switch
            {
                < 0 => ImprovementVerdict.Improved,
                > 0 => ImprovementVerdict.Worse,
                _ => ImprovementVerdict.NotShown,
            }));
        }

        return new ImprovementRule(confidence, looks.ToValueList(), NextLook(logSpreads.Count));
    }

    /// <summary>How sure the limits must be when so many kinds of test share the 1 %.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than one kind.</exception>
    public static double ConfidenceFor(int kinds)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(kinds, 1);
        return 1 - (MostError / kinds);
    }

    /// <summary>How many sessions the first look after so many sessions needs.</summary>
    internal static int NextLook(int sessions) => sessions < FewestSessions ? FewestSessions : ((sessions / Every) + 1) * Every;
}
