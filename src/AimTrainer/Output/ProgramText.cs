using System.Globalization;
using AimTrainer.Domain;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Programs for people to read.</summary>
internal static class ProgramText
{
    public static void List(IEnumerable<(ProgramScript Program, bool Shipped)> programs, UserConsole console)
    {
        var table = Consoles.Table(("id", ColumnKind.Name), ("weeks", ColumnKind.Number), ("purpose", ColumnKind.Words));
        foreach (var (program, shipped) in programs)
        {
            table.AddRow(new Text(shipped ? program.Id : $"{program.Id} (own)"), new Text($"{program.Weeks.Count}"), new Text(program.Purpose));
        }

        Consoles.Write(Consoles.For(console), table);
    }

    public static void Show(ProgramScript program, TextWriter output)
    {
        output.WriteLine($"{program.Name} ({program.Id})");
        output.WriteLine($"Purpose: {program.Purpose}");
        output.WriteLine($"For: {program.WhoFor}");
        output.WriteLine($"Who may join: {program.Joining.Who} {Minors(program.Joining.Minors)}{(program.Joining.Most is { } most ? $" At most {most}." : "")}");
        output.WriteLine(program.MakeUp.Most == 0 || program.MakeUp.WithinDays == 0
            ? "A missed session is not made up."
            : $"A missed session may be made up within {Words.Count(program.MakeUp.WithinDays, "day")} after its week, at most {program.MakeUp.Most} of them.");
        foreach (var caution in program.Cautions)
        {
            output.WriteLine($"Take care: {caution}");
        }

        foreach (var level in program.Levels)
        {
            output.WriteLine($"Level {level.Name}: {level.About}");
        }

        for (var week = 0; week < program.Weeks.Count; week++)
        {
            output.WriteLine();
            output.WriteLine($"Week {week + 1}: {program.Weeks[week].Name}");
            foreach (var session in program.Weeks[week].Sessions)
            {
                output.WriteLine($"  {session.Name}{(session.IsRetentionTest ? " (begins with a test of what has stayed)" : "")}");
                foreach (var drill in session.Drills)
                {
                    var focus = drill.Focus is { } words ? $": {words}" : "";
                    output.WriteLine($"    {drill.DrillId}{focus}");
                    foreach (var goal in drill.Goals)
                    {
                        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"      goal for {goal.Level}: {goal.HeldShare:0.##} of the test shots hold their target"));
                    }
                }
            }
        }
    }

    private static string Minors(MinorsRule rule) => rule switch
    {
        MinorsRule.No => "Adults only.",
        MinorsRule.Yes => "Minors with a guardian's consent.",
        _ => "Minors only, with a guardian's consent.",
    };
}
