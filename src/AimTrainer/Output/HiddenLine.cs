using System.Text;

namespace AimTrainer.Output;

/// <summary>Asks for a line that is not shown as it is typed.</summary>
internal static class HiddenLine
{
    public static string Ask(UserConsole console, string prompt)
    {
        console.Out.Write(prompt);
        var words = new StringBuilder();
        while (console.ReadHidden() is var key && key.Key != ConsoleKey.Enter)
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                words.Length = Math.Max(0, words.Length - 1);
            }
            else if (key.KeyChar != 0)
            {
                words.Append(key.KeyChar);
            }
        }

        console.Out.WriteLine();
        return words.ToString();
    }
}
