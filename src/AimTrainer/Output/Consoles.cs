using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>Makes consoles for tables: colours and width of the terminal, or plain text 160 wide for a file or a pipe.</summary>
internal static class Consoles
{
    private const int PipeWidth = 160;

    public static IAnsiConsole For(TextWriter output)
    {
        var piped = !ReferenceEquals(output, Console.Out) || Console.IsOutputRedirected;
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = piped ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = piped ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
        });
        if (piped)
        {
            console.Profile.Width = PipeWidth;
        }

        return console;
    }
}
