using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Lines with colours and tables: colours and width of the terminal, or plain text for a file or a pipe.</summary>
internal static class Consoles
{
    /// <summary>How wide a table may be where no terminal says so.</summary>
    private const int PipeTableWidth = 160;

    /// <summary>Lines in a file or a pipe are never broken, so that a path in them can be taken out again.</summary>
    private const int PipeLineWidth = 1 << 16;

    public static IAnsiConsole For(UserConsole console) => console.PersonReads
        ? AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(console.Out),
            Ansi = WantsNoColour ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = WantsNoColour ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
        })
        : Plain(console.Out, PipeLineWidth);

    /// <summary>Plain text of a certain width.</summary>
    public static IAnsiConsole Plain(TextWriter output, int width)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        console.Profile.Width = width;
        return console;
    }

    /// <summary>A table without lines: two spaces between columns, no empty lines, no spaces at line ends.</summary>
    public static Table Table(params ReadOnlySpan<(string Heading, ColumnKind Kind)> columns)
    {
        var table = new Table { Border = TableBorder.None };
        foreach (var (heading, kind) in columns)
        {
            var gap = table.Columns.Count == columns.Length - 1 ? 0 : 2;
            var column = new TableColumn(new Text(heading, new Style(decoration: Decoration.Bold))) { Padding = new Padding(0, 0, gap, 0), NoWrap = kind != ColumnKind.Words };
            table.AddColumn(kind == ColumnKind.Number ? column.RightAligned() : column);
        }

        return table;
    }

    /// <summary>Writes a table made by <see cref="Table"/>.</summary>
    public static void Write(IAnsiConsole console, Table table)
    {
        using var text = new StringWriter(System.Globalization.CultureInfo.InvariantCulture);
        Plain(text, Math.Min(console.Profile.Width, PipeTableWidth)).Write(table);
        foreach (var line in text.ToString().Split('\n'))
        {
            if (line.AsSpan().Trim().Length > 0)
            {
                console.WriteLine(line.TrimEnd());
            }
        }
    }

    // Source: no-color.org, the informal standard: present and not empty means no colours.
    private static bool WantsNoColour => Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 };
}
