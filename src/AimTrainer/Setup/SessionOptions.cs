using System.CommandLine;
using System.CommandLine.Parsing;
using AimTrainer.Commands;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>The options from which a session is set up.</summary>
internal sealed class SessionOptions
{
    public Option<string?> Bowler { get; } = CommonOptions.Name("--bowler", "The bowler's name in the records.");

    public Option<Hand?> Hand { get; } = CommonOptions.Hand();

    public Option<string?> Ball { get; } = CommonOptions.Name("--ball", "The ball, as the bowler calls it.");

    public Option<ValueList<ChosenBall>?> Balls { get; } = new("--balls")
    {
        Description = "The balls of a drill that compares, as ROLE=NAME with semicolons between: \"reference=Old one;other=New one\" (drill show tells the roles).",
        HelpName = "ROLE=NAME;...",
        CustomParser = ParseBalls,
    };

    public Option<string?> Lane { get; } = CommonOptions.Lane();

    public Option<double?> Pattern { get; } = CommonOptions.Pattern();

    public Option<Breakpoint?> Breakpoint { get; } = CommonOptions.Breakpoint();

    public Option<ulong?> Seed { get; } = CommonOptions.Seed();

    public Option<int> Station { get; } = CommonOptions.Whole("--station", "The station (lane), 1 to 64.", 1, 64, 1);

    public IEnumerable<Option> All => [Bowler, Hand, Ball, Balls, Lane, Pattern, Breakpoint, Seed, Station];

    /// <summary>Sets a session up, with what the record knows of the bowler.</summary>
    public SessionSetup Setup(ParseResult parsed, DrillSource drill, string bowler, BowlerRecord? known, bool simulated, TimeProvider clock)
    {
        var wish = new SessionWish
        {
            Bowler = bowler,
            Drill = drill,
            Lane = LaneFile.Read(parsed.GetValue(Lane)),
            Hand = parsed.GetValue(Hand),
            Ball = parsed.GetValue(Ball),
            Balls = parsed.GetValue(Balls) ?? [],
            Breakpoint = parsed.GetValue(Breakpoint),
            PatternLength = parsed.GetValue(Pattern) is { } feet ? Feet.FromFeet(feet) : null,
            Seed = parsed.GetValue(Seed),
            Simulated = simulated,
        };
        return wish.ToSetup(parsed.GetValue(Station), known, clock.GetUtcNow());
    }

    internal static ValueList<ChosenBall>? ParseBalls(ArgumentResult result)
    {
        var balls = new List<ChosenBall>();
        foreach (var part in result.Tokens[0].Value.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var equals = part.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0 || part[(equals + 1)..].Trim() is not { Length: > 0 and <= 200 } name)
            {
                result.AddError($"--balls: found \"{part}\"; allowed: ROLE=NAME, with semicolons between, as \"reference=Old one;other=New one\"");
                return null;
            }

            balls.Add(new ChosenBall(part[..equals].Trim(), name));
        }

        return balls.ToValueList();
    }
}
