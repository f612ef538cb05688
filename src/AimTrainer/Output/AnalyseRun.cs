using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Reports;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>One analysis of a file, in passes over it, so that a file of any length needs little memory.</summary>
internal sealed class AnalyseRun(
    UserConsole console, string file, AccuracySettings settings, IReadOnlyList<AnalyseTarget> targets, string? bowler, Hand hand)
{
    private readonly AccuracyAccumulator _accuracy = new(settings);
    private readonly LineStudy _study = new(settings);
    private readonly AnalyseInput _input = new(targets, bowler);

    /// <summary>How sides are called.</summary>
    public SideNames Sides { get; init; }

    /// <summary>Shots taken.</summary>
    public int Shots => _input.Shots;

    /// <summary>Rows that could not be read.</summary>
    public int Problems => _input.Problems;

    private MissWords Sentences => new(settings.Lane, hand, Sides);

    private PlanKind Kind => _study.Plan?.Kind ?? PlanKind.StraightThroughTargets;

    /// <summary>First pass: gathers.</summary>
    public void First(IEnumerable<FeedItem> items)
    {
        foreach (var (shot, _) in _input.Read(items, console.Error.WriteLine))
        {
            _accuracy.Add(shot);
            _study.Add(shot);
        }

        if (Shots == 0)
        {
            throw new UserException(
                $"{file}: no shot in it could be read{(Problems > 0 ? ", see above" : "")}"
                + $"{(_input.OfOthers > 0 ? $"; {Words.Count(_input.OfOthers, "shot")} not of {bowler}" : "")}");
        }

        if (_input.OfOthers > 0)
        {
            console.Error.WriteLine($"{file}: {Words.Count(_input.OfOthers, "shot")} not of {bowler} left out (see --bowler)");
        }

        _study.Close();
    }

    /// <summary>Whether a miss is gross: then <see cref="SetAside"/> is to be called before anything is written.</summary>
    public bool HasGross => _study.HasGross;

    /// <summary>A pass of its own where there are gross misses: what shots are held against is learned without theirs.</summary>
    /// <param name="items">The file again.</param>
    public void SetAside(IEnumerable<FeedItem> items) => _study.SetAsideGross(Again(items).Select(each => each.Shot));

    /// <summary>Last pass: everything as one JSON document.</summary>
    public void Json(IEnumerable<FeedItem> items)
    {
        using var output = new BufferedStream(console.OpenOut(), 1 << 16);
        using (var writer = new Utf8JsonWriter(output, Output.Json.Long))
        {
            writer.WriteStartObject();
            writer.WriteString("file"u8, file);
            writer.WriteString("bowler"u8, bowler);
            writer.WriteString("hand"u8, Words.Of(hand));
            AnalyseJson.Write(writer, "lane", new { settings.Lane.Name, WidthInches = settings.Lane.Width, StraightFeet = settings.Lane.StraightDistance });
            AnalyseJson.Write(writer, "noiseBoards", settings.NoiseBoards);
            writer.WriteNumber("confidence"u8, BoundedEstimate.UsualConfidence);
            AnalyseJson.Write(writer, "targets", targets);
            writer.WriteNumber("shots"u8, Shots);
            writer.WriteNumber("repeatedShots"u8, _input.Repeated);
            writer.WriteNumber("shotsOfOthers"u8, _input.OfOthers);
            writer.WriteNumber("unreadableRows"u8, Problems);
            AnalyseJson.Write(writer, "accuracy", _accuracy.Result());
            AnalyseJson.Write(writer, "causes", _study.Set);
            writer.WriteStartArray("splits"u8);
            var number = 0;
            var sentences = Sentences;
            foreach (var (shot, line) in Again(items))
            {
                AnalyseJson.WriteValue(writer, ShotFigures.Of(++number, shot, _study.Split(shot), sentences, Kind) with { Line = line });
            }

            writer.WriteEndArray();
            AnalyseJson.Write(writer, "causesWithoutGrossMisses", _study.WithoutGross);
            writer.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }

    /// <summary>Last pass: for a person.</summary>
    /// <param name="items">The file again.</param>
    /// <param name="most">So many sentences at most.</param>
    public void Text(IEnumerable<FeedItem> items, int most)
    {
        var why = new WhyText(console);
        why.Line($"{file}: {Words.Count(Shots, "shot")}{(bowler is null ? "" : $" of {bowler}")}, {Words.Of(hand)} hand"
            + $"{(_input.Repeated > 0 ? $"; {_input.Repeated} repeated, taken once" : "")}{(Problems > 0 ? $"; {Problems} unreadable, see above" : "")}.");
        new AnalyseText(console).Accuracy(_accuracy.Result());
        why.Set("Why the shots missed", _study.Set!);
        var misses = new WhyMisses(why, Sentences, Kind, most);
        var number = 0;
        foreach (var (shot, line) in Again(items))
        {
            number++;
            misses.Add($"shot {number} (line {line})", shot, _study.Split(shot));
        }

        misses.Finish(_study.WithoutGross);
    }

    // What could not be read was said in the first pass.
    private IEnumerable<(ObservedShot Shot, int Line)> Again(IEnumerable<FeedItem> items) => new AnalyseInput(targets, bowler).Read(items, _ => { });
}
