using System.Buffers;
using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>Reads a program from JSON. The format is told in <c>docs/programs.md</c> and <c>drills/programs/program.schema.json</c>.</summary>
public static class ProgramReader
{
    private const int Format = 1, MostLevels = 8, MostSessionsAWeek = 14, MostDrills = 12;

    private static readonly SearchValues<char> IdLetters = SearchValues.Create("abcdefghijklmnopqrstuvwxyz0123456789-");

    /// <summary>Reads a program, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    /// <param name="drill">The drill of an id; null when there is none.</param>
    public static FileRead<ProgramScript> Read(string fileName, ReadOnlySpan<byte> utf8, Func<string, DrillScript?> drill)
    {
        var file = JsonFile.Read(fileName, utf8);
        var program = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Program(reader, drill) : null;
        return new FileRead<ProgramScript>(file.HasProblems ? null : program, file.Problems);
    }

    private static ProgramScript? Program(ObjectReader program, Func<string, DrillScript?> drill)
    {
        program.OptionalText("$schema", 500);
        program.Whole("format", Format, Format);
        var id = program.Text("id", 60);
        if (id is not null && id.AsSpan().ContainsAnyExcept(IdLetters))
        {
            program.Report("id", FoundText.Quoted(id), "lower-case letters a to z, digits and hyphens");
        }

        var name = program.Text("name", 80);
        var purpose = program.Text("purpose", 500);
        var whoFor = program.Text("whoFor", 300);
        var joining = program.Object("joining") is { } joiningReader ? Joining(joiningReader) : null;
        var makeUp = program.Object("makeUp") is { } makeUpReader ? MakeUp(makeUpReader) : null;
        var cautions = program.OptionalTexts("cautions", 10, 500);
        var asks = program.OptionalFlag("asksHowArmFeels") ?? false;
        var levels = Levels(program);
        var weeks = Weeks(program, [.. levels.AsEnumerable().Select(level => level.Name)], drill);
        program.Done();
        return id is null || name is null || purpose is null || whoFor is null || joining is null || makeUp is null
            ? null
            : new ProgramScript
            {
                Id = id,
                Name = name,
                Purpose = purpose,
                WhoFor = whoFor,
                Joining = joining,
                MakeUp = makeUp,
                Cautions = cautions,
                AsksHowArmFeels = asks,
                Levels = levels,
                Weeks = weeks,
            };
    }

    private static ProgramJoining? Joining(ObjectReader joining)
    {
        var who = joining.Text("who", 300);
        var minors = joining.Choice<MinorsRule>("minors");
        var most = joining.OptionalWhole("most", 1, 500);
        joining.Done();
        return who is null || minors is not { } rule ? null : new ProgramJoining(who, rule, (int?)most);
    }

    private static ProgramMakeUp? MakeUp(ObjectReader makeUp)
    {
        var days = makeUp.Whole("withinDays", 0, 60);
        var most = makeUp.Whole("most", 0, ProgramScript.MostWeeks * MostSessionsAWeek);
        makeUp.Done();
        return days is { } within && most is { } count ? new ProgramMakeUp((int)within, (int)count) : null;
    }

    private static ValueList<ProgramLevel> Levels(ObjectReader program)
    {
        var names = new NameSet("level", "program");
        var levels = new List<ProgramLevel>();
        foreach (var level in program.Objects("levels", 1, MostLevels, "levels") ?? [])
        {
            names.Take(level);
            var name = level.Text("name", 60);
            var about = level.Text("about", 300);
            level.Done();
            if (name is not null && about is not null)
            {
                levels.Add(new ProgramLevel(name, about));
            }
        }

        return levels.ToValueList();
    }

    private static ValueList<PlannedWeek> Weeks(ObjectReader program, string[] levels, Func<string, DrillScript?> drill)
    {
        var names = new NameSet("session", "program");
        var weeks = new List<PlannedWeek>();
        foreach (var week in program.Objects("weeks", 1, ProgramScript.MostWeeks, "weeks") ?? [])
        {
            var name = week.Text("name", 120);
            var sessions = new List<PlannedSession>();
            foreach (var session in week.Objects("sessions", 1, MostSessionsAWeek, "sessions") ?? [])
            {
                names.Take(session);
                sessions.Add(Session(session, levels, drill));
            }

            week.Done();
            weeks.Add(new PlannedWeek(name ?? "", sessions.ToValueList()));
        }

        return weeks.ToValueList();
    }

    private static PlannedSession Session(ObjectReader session, string[] levels, Func<string, DrillScript?> drill)
    {
        var name = session.Text("name", 120);
        var isRetentionTest = session.OptionalFlag("retentionTest") ?? false;
        var drills = new List<PlannedDrill>();
        foreach (var planned in session.Objects("drills", 1, MostDrills, "drills") ?? [])
        {
            var script = Drill(planned, drill);
            if (isRetentionTest && drills.Count == 0 && script is { Blocks: [{ Kind: not BlockKind.Test }, ..] })
            {
                planned.Report("drill", $"{FoundText.Quoted(script.Id)}, whose first block trains", "a drill that begins with a test block: a retention test comes before any practice");
            }

            drills.Add(new PlannedDrill(script?.Id ?? "", planned.OptionalText("focus", 300), Goals(planned, levels, script)));
            planned.Done();
        }

        session.Done();
        return new PlannedSession(name ?? "", isRetentionTest, drills.ToValueList());
    }

    private static DrillScript? Drill(ObjectReader planned, Func<string, DrillScript?> drill)
    {
        if (planned.Text("drill", 60) is not { } id)
        {
            return null;
        }

        if (drill(id) is { } found)
        {
            return found;
        }

        planned.Report("drill", FoundText.Quoted(id), "the id of a drill without mistakes (see: aimtrainer drill list)");
        return null;
    }

    private static ValueList<LevelGoal> Goals(ObjectReader planned, string[] levels, DrillScript? script)
    {
        var given = new HashSet<string>(StringComparer.Ordinal);
        var goals = new List<LevelGoal>();
        foreach (var goal in planned.OptionalObjects("goals", 1, MostLevels, "goals") ?? [])
        {
            var level = goal.Word("level", levels);
            if (level is not null && !given.Add(level))
            {
                goal.Report("level", $"a second goal for {FoundText.Quoted(level)}", "one goal a level");
            }

            var share = goal.Number("heldShare", 0.05, 0.95);
            goal.Done();
            if (level is not null && share is { } held)
            {
                goals.Add(new LevelGoal(level, held));
            }
        }

        if (goals.Count > 0 && script is not null && !script.Blocks.AsEnumerable().Any(block => block.Kind == BlockKind.Test))
        {
            planned.Report(
                "goals", string.Create(CultureInfo.InvariantCulture, $"goals for {FoundText.Quoted(script.Id)}, which has no test block"),
                "goals for drills with a test block only: a training block's share of holds is what its sizing makes it");
        }

        return goals.ToValueList();
    }
}
