using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>Makes a comparison of what was read. Pure: the same throws make the same comparison.</summary>
public static class BallsBuilder
{
    /// <summary>Sessions on one lane that begin within so many hours of the first are one visit: the same oil.</summary>
    public const double VisitHours = 12;

    /// <summary>From the record.</summary>
    /// <param name="question">Which balls.</param>
    /// <param name="sources">The sessions of one bowler, in any order.</param>
    /// <param name="more">How many older sessions were not read.</param>
    /// <param name="made">When it is made.</param>
    public static BallsReport OfRecord(BallsQuestion question, IReadOnlyList<BallsSource> sources, int more, DateTimeOffset made)
    {
        var notes = new List<string>();
        var (sessions, simulated) = Alike(sources, notes);
        if (more > 0)
        {
            notes.Add($"only the newest {BallsReader.MostSessions} sessions are in it; {ReportWords.Count(more, "older one")} not");
        }

        var visits = Visits(sessions);
        var (drafts, others) = (new List<Draft>(), 0);
        foreach (var session in sessions)
        {
            var day = visits.Count > 1 ? $", {visits.Name(session)}" : "";
            foreach (var shot in session.Record.Blocks.SelectMany(block => block.Shots.AsEnumerable()).Select(recorded => recorded.Shot).OrderBy(shot => shot.Number))
            {
                var ball = BallOf(shot, session.Setup);
                if (question.Balls.Count > 0 && !(ball is not null && question.Balls.Contains(ball, StringComparer.OrdinalIgnoreCase)))
                {
                    others++;
                    continue;
                }

                drafts.Add(new Draft(session.Setup.SessionId, shot.Number, shot.At, shot.Shot, ball, LineName(shot.Targets) + day, WhyNot(shot)));
            }
        }

        if (others > 0)
        {
            notes.Add($"{ReportWords.Count(others, "throw")} with other balls, or with a ball that nobody named, {(others == 1 ? "is" : "are")} not in it");
        }

        notes.AddRange(question.Balls.AsEnumerable().Where(asked => !drafts.Exists(one => string.Equals(one.Ball, asked, StringComparison.OrdinalIgnoreCase)))
            .Select(asked => $"no throw with the ball {FoundText.Quoted(asked)} in these sessions"));
        var newest = sessions.Count == 0 ? null : sessions[^1].Setup;
        var reference = question.Reference ?? (question.Balls.Count > 0 ? question.Balls[0] : drafts.Select(one => one.Ball).FirstOrDefault(ball => ball is not null) ?? "");
        return Build(question, drafts, reference, newest?.Lane ?? LaneProfileReader.Default, notes, new BallsReport(
            newest?.Bowler ?? question.Bowler, newest?.Hand ?? Hand.Right, simulated, made, question.From, question.To, null,
            sessions.Select(Listed).ToValueList(), question.Margins, [], Nothing, [], []));
    }

    /// <summary>From a file.</summary>
    /// <param name="question">The reference ball and margins; its sessions and period are not looked at.</param>
    /// <param name="throws">In the order of the file.</param>
    /// <param name="fileLines">The line of the file of each throw, by its number; a throw without one has none.</param>
    /// <param name="file">Its name.</param>
    /// <param name="bowler">Whose; null when nobody said.</param>
    /// <param name="hand">Boards count from its edge.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="targets">What all throws were aimed at; may be empty.</param>
    /// <param name="made">When it is made.</param>
    public static BallsReport OfFile(
        BallsQuestion question, IReadOnlyList<ComparedThrow> throws, IReadOnlyDictionary<int, int> fileLines, string file, string? bowler, Hand hand, LaneProfile lane,
        ValueList<Crossing> targets, DateTimeOffset made)
    {
        var named = throws.Any(one => one.Line is not null);
        var drafts = throws.Select(one => new Draft(
            null, fileLines.TryGetValue(one.Number, out var line) ? line : null, one.Shot.Time, one.Shot, one.Ball, named ? one.Line : BallComparer.OnlyLine, null)).ToList();
        return Build(question, drafts, question.Reference ?? "", lane, [], new BallsReport(
            bowler, hand, false, made, null, null, file, [], question.Margins, [], Nothing, [], []), targets);
    }

    /// <summary>"board 15 at 15 ft to 9 at 40 ft".</summary>
    internal static string LineName(ValueList<TargetResult> targets) => "board " + string.Join(" to ", targets.AsEnumerable().Select(target =>
        string.Create(CultureInfo.InvariantCulture, $"{target.Target.Centre.Boards:0.##} at {target.Target.Distance.Value:0.##} ft")));

    private static ComparisonReport Nothing => new(null, "", [], [], [], [], []);

    private static BallsReport Build(
        BallsQuestion question, List<Draft> drafts, string reference, LaneProfile lane, List<string> notes, BallsReport empty, ValueList<Crossing>? targets = null)
    {
        var numbered = drafts.Select((one, i) => (Number: i + 1, Draft: one)).ToList();
        var comparison = BallComparer.Compare(
            numbered.Where(one => one.Draft.Why is null).Select(one => new ComparedThrow(one.Number, one.Draft.Shot, one.Draft.Ball, one.Draft.Line)),
            new ComparisonSettings
            {
                Reference = reference,
                Lane = lane,
                Targets = targets ?? [],
                Limits = question.Limits,
                MarginBoards = question.Margins.MarginBoards,
                MarginDegrees = question.Margins.MarginDegrees,
                MarginFeet = question.Margins.MarginFeet,
                MarginMph = question.Margins.MarginMph,
            });
        var voided = numbered.Where(one => one.Draft.Why is not null)
            .Select(one => new ExcludedThrow(one.Number, one.Draft.Ball, one.Draft.Line, null, one.Draft.Why!));
        comparison = comparison with { Excluded = comparison.Excluded.Concat(voided).OrderBy(one => one.Number).ToValueList() };
        var reasons = comparison.Excluded.ToLookup(one => one.Number);
        var throws = numbered.Select(one => new BallsThrow(
            one.Number, one.Draft.SessionId, one.Draft.Place, one.Draft.At, Spelled(one.Draft.Ball, comparison), one.Draft.Line,
            one.Draft.Ball is not null && !reasons[one.Number].Any(why => why.Measure is null),
            Places(one.Draft.Shot, [.. reasons[one.Number].Select(why => why.Measure).OfType<string>()]),
            reasons[one.Number].Select(why => new BallsReason(why.Measure, why.Reason)).ToValueList()));
        return empty with { Throws = throws.ToValueList(), Comparison = comparison, Fits = BagWords.Of(comparison.Balls.OrderBy(place => drafts.FindIndex(one => string.Equals(one.Line, place.Line, StringComparison.OrdinalIgnoreCase)))).ToValueList(), Notes = notes.ToValueList() };
    }

    /// <summary>Names that differ in capitals or blanks only are one ball: as the comparison spells it.</summary>
    private static string? Spelled(string? ball, ComparisonReport comparison)
    {
        var plain = ball is null ? "" : string.Join(' ', ball.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return plain.Length == 0 ? null
            : comparison.Balls.AsEnumerable().Select(place => place.Ball).FirstOrDefault(known => known.Equals(plain, StringComparison.OrdinalIgnoreCase)) ?? plain;
    }

    /// <summary>Sessions of one hand, real ones where there are any.</summary>
    private static (List<BallsSource> Sessions, bool Simulated) Alike(IReadOnlyList<BallsSource> sources, List<string> notes)
    {
        var ordered = sources.OrderBy(source => source.Setup.At).ThenBy(source => source.Setup.SessionId, StringComparer.Ordinal).ToList();
        var simulated = ordered.Count > 0 && ordered.TrueForAll(source => source.Setup.Simulated);
        var kind = ordered.Where(source => source.Setup.Simulated == simulated).ToList();
        var hand = kind.Count == 0 ? Hand.Right : kind[^1].Setup.Hand;
        var alike = kind.Where(source => source.Setup.Hand == hand).ToList();
        if (kind.Count < ordered.Count)
        {
            notes.Add($"{ReportWords.Count(ordered.Count - kind.Count, "simulated session")} left out: simulated and real throws are never mixed");
        }

        if (alike.Count < kind.Count)
        {
            notes.Add($"{ReportWords.Count(kind.Count - alike.Count, "session")} of the other hand left out: its boards count from the other edge");
        }

        return (alike, simulated);
    }

    private static VisitNames Visits(List<BallsSource> sessions)
    {
        var visits = new List<List<BallsSource>>();
        foreach (var session in sessions)
        {
            if (visits.FindLast(visit => visit[0].Setup.Station == session.Setup.Station && session.Setup.At - visit[0].Setup.At < TimeSpan.FromHours(VisitHours)) is { } same)
            {
                same.Add(session);
            }
            else
            {
                visits.Add([session]);
            }
        }

        return new VisitNames(visits);
    }

    /// <summary>In a drill that compares, a shot that names no ball is one with the ball that was due.</summary>
    private static string? BallOf(GradedShot shot, SessionSetup setup) => shot.Compared?.Ball ?? shot.Shot.Ball ?? setup.Ball;

    private static string? WhyNot(GradedShot shot) => shot switch
    {
        { VoidReason: { } why } => $"does not count: {why}",
        { Comparability: { IsComparable: false } not } => $"not the same throw: {string.Join(", ", not.Reasons.AsEnumerable())}",
        { Comparability: { IsComparable: null } open } => $"it cannot be told whether it was the same throw: {string.Join(", ", open.Reasons.AsEnumerable())}",
        _ => null,
    };

    private static BallsSession Listed(BallsSource source)
    {
        var shots = source.Record.Blocks.SelectMany(block => block.Shots.AsEnumerable()).ToList();
        return new BallsSession(
            source.Setup.SessionId, source.Setup.At, source.Setup.Station, source.Drill, source.Record.EndedWhy is not null,
            shots.Select(shot => BallOf(shot.Shot, source.Setup)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).ToValueList(), shots.Count);
    }

    private static ValueList<BallsPlace> Places(Shot shot, HashSet<string> misread)
    {
        var places = new SortedDictionary<double, BallsPlace>();
        if (shot.Laydown is { } laydown)
        {
            Add(0, laydown, "");
        }

        if (shot.Entry is { } entry)
        {
            Add(LaneProfile.HeadPin.Value, entry, "entryBoard");
        }

        if (shot.Breakpoint is { Distance: { } distance } breakpoint)
        {
            Add(distance.Value, breakpoint.Board, "breakpointBoard");
        }

        foreach (var crossing in shot.Crossings)
        {
            Add(crossing.Distance.Value, crossing.Board, string.Create(CultureInfo.InvariantCulture, $"boardAt{crossing.Distance.Value}"));
        }

        return places.Values.ToValueList();

        void Add(double feet, Board board, string measure) => places[feet] = new BallsPlace(feet, board.Boards, misread.Contains(measure));
    }

    /// <summary>A throw before it is compared.</summary>
    private sealed record Draft(string? SessionId, int? Place, DateTimeOffset? At, Shot Shot, string? Ball, string? Line, string? Why);

    /// <summary>What each visit is called: its day, with time and lane where a day has several.</summary>
    private sealed class VisitNames(List<List<BallsSource>> visits)
    {
        public int Count => visits.Count;

        public string Name(BallsSource session)
        {
            var first = visits.Find(visit => visit.Contains(session))![0].Setup;
            var day = ReportWords.Day(first.At);
            return visits.Count(visit => ReportWords.Day(visit[0].Setup.At) == day) == 1
                ? day
                : string.Create(CultureInfo.InvariantCulture, $"{first.At.UtcDateTime:yyyy-MM-dd HH:mm} on lane {first.Station}");
        }
    }
}
