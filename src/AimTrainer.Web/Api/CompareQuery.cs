using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Reports;

namespace AimTrainer.Web;

/// <summary>Which balls a page or a call asks to compare, as its address says it.</summary>
internal sealed record CompareQuery
{
    /// <summary>Whose.</summary>
    public string? Bowler { get; init; }

    /// <summary>Sessions by their ids; none takes the newest.</summary>
    public string[]? Session { get; init; }

    /// <summary>Balls; none takes every ball.</summary>
    public string[]? Ball { get; init; }

    /// <summary>The ball that the others are held against.</summary>
    public string? Reference { get; init; }

    /// <summary>First day, UTC.</summary>
    public string? From { get; init; }

    /// <summary>Last day, UTC.</summary>
    public string? To { get; init; }

    /// <summary>Up to where a difference of boards does not matter.</summary>
    public double? Margin { get; init; }

    /// <summary>The same for directions, degrees.</summary>
    public double? MarginDegrees { get; init; }

    /// <summary>The same for the distance of the breakpoint, feet.</summary>
    public double? MarginFeet { get; init; }

    /// <summary>The question, or what is wrong with it.</summary>
    /// <param name="problem">What was found and what is allowed; null when nothing is wrong.</param>
    public BallsQuestion? Question(out string? problem)
    {
        problem = Outside("margin", Margin, 0.05, 10) ?? Outside("marginDegrees", MarginDegrees, 0.05, 10) ?? Outside("marginFeet", MarginFeet, 0.1, 20);
        var (from, to) = (Day("from", From, ref problem), Day("to", To, ref problem));
        if (problem is null && from > to)
        {
            problem = "from, to: the first day must not lie after the last";
        }

        return problem is not null ? null : new BallsQuestion
        {
            Bowler = Empty(Bowler),
            SessionIds = Named(Session),
            Balls = Named(Ball),
            Reference = Empty(Reference),
            From = Midnight(from),
            To = Midnight(to?.AddDays(1)),
            Margins = new BallsMargins { MarginBoards = Margin ?? 0.5, MarginDegrees = MarginDegrees ?? 0.5, MarginFeet = MarginFeet ?? 1 },
        };
    }

    /// <summary>The same question as the end of an address, from its question mark on.</summary>
    public string Address()
    {
        var parts = new List<string>();
        Add("bowler", Bowler);
        Array.ForEach(Session ?? [], each => Add("session", each));
        Array.ForEach(Ball ?? [], each => Add("ball", each));
        Add("reference", Reference);
        Add("from", From);
        Add("to", To);
        Add("margin", Margin?.ToString(CultureInfo.InvariantCulture));
        Add("marginDegrees", MarginDegrees?.ToString(CultureInfo.InvariantCulture));
        Add("marginFeet", MarginFeet?.ToString(CultureInfo.InvariantCulture));
        return "?" + string.Join('&', parts);

        void Add(string name, string? value)
        {
            if (!string.IsNullOrWhiteSpace(value))
            {
                parts.Add($"{name}={Uri.EscapeDataString(value)}");
            }
        }
    }

    private static string? Empty(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static ValueList<string> Named(string[]? names) => (names ?? []).Select(Empty).OfType<string>().ToValueList();

    private static string? Outside(string name, double? value, double low, double high) =>
        value is { } number && !(number >= low && number <= high) ? string.Create(CultureInfo.InvariantCulture, $"{name}: found {number}; allowed: {low} to {high}") : null;

    private static DateOnly? Day(string name, string? text, ref string? problem)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day < DateOnly.MaxValue)
        {
            return day;
        }

        problem ??= $"{name}: found {FoundText.Quoted(text)}; allowed: a day such as 2026-09-01";
        return null;
    }

    private static DateTimeOffset? Midnight(DateOnly? day) => day is { } known ? new DateTimeOffset(known.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero) : null;
}
