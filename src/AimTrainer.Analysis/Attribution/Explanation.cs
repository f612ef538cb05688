using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// Speed and revs as explanations, by ordinary least squares. What goes together need not be cause: a bowler who throws harder may also aim
/// elsewhere.
/// </summary>
/// <param name="Explains">"miss", or "beyond" for what the ball did beyond the straight line.</param>
/// <param name="Shots">Shots of which all is known, n.</param>
/// <param name="SpeedAt">Where the speed was measured; null when speed is not among the explanations.</param>
/// <param name="By">The explanations; empty when nothing can be said.</param>
/// <param name="ShareExplained">Share of the variance that goes with them, 0 to 1 (R², which few shots make too large).</param>
/// <param name="RestBoards">Standard deviation of what is left.</param>
/// <param name="Why">Why nothing can be said; null when something can.</param>
public sealed record Explanation(
    string Explains, int Shots, SpeedPlace? SpeedAt, ValueList<ExplainedBy> By, double? ShareExplained, double? RestBoards, string? Why)
{
    /// <summary>From how many shots on there is an explanation.</summary>
    public const int Fewest = 10;

    internal static Explanation Of(string explains, CoMoments moments, int response, SpeedPlace? place, ValueList<string> names)
    {
        var what = string.Join(" and ", names);
        if (moments.Count < Fewest)
        {
            return No($"{moments.Count} shots with {what}; known from {Fewest} on");
        }

        // Responses come first among the variables, the explanations after them.
        var predictors = Enumerable.Range(moments.Variables - names.Count, names.Count).ToArray();
        if (MomentRegression.Of(moments, response, predictors) is not { } fit)
        {
            return No($"{what} did not vary, or only together");
        }

        return new Explanation(
            explains,
            moments.Count,
            place,
            names.Select((name, i) => new ExplainedBy(name, fit.Slopes[i])).ToValueList(),
            fit.ShareExplained,
            fit.ResidualDeviation,
            null);

        Explanation No(string why) => new(explains, moments.Count, place, [], null, null, why);
    }
}
