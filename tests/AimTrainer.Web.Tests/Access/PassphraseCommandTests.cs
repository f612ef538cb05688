using AimTrainer.Commands;
using AimTrainer.Output;

namespace AimTrainer.Web.Tests;

/// <summary>The passphrase as it is typed at the terminal, where nothing of it is shown.</summary>
public sealed class PassphraseCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-passphrase-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Typed_TwiceTheSame_IsSetAndShownNowhere()
    {
        // A key typed wrongly and taken back, one too many taken back, and keys that are no character.
        var (code, output, error) = Type("xs\b\b\bcorrect hrose\b\b\b\borse battery\n", "correct horse battery\n");

        Assert.Equal((ExitCodes.Ok, ""), (code, error));
        Assert.Equal("Passphrase: \nOnce more: \nThe passphrase is set.\n", output);
        Assert.True(new Passphrase(_folder).Matches("correct horse battery"));
        Assert.False(new Passphrase(_folder).Matches("xscorrect horse battery"));
    }

    [Fact]
    public void Typed_NotTheSameTwice_ChangesNothing()
    {
        new Passphrase(_folder).Set("the one of before");

        var (code, _, error) = Type("correct horse battery\n", "correct horse batery\n");

        Assert.Equal(ExitCodes.BadInput, code);
        Assert.Contains("the two are not the same; nothing was changed", error, StringComparison.Ordinal);
        Assert.True(new Passphrase(_folder).Matches("the one of before"));
    }

    [Theory]
    [InlineData("too short", "found 9 characters; allowed: 10 to 200")]
    [InlineData("", "found 0 characters; allowed: 10 to 200")]
    public void Typed_TooShort_IsRefusedWithWhatIsAllowed(string words, string why)
    {
        var (code, output, error) = Type(words + "\n", words + "\n");

        Assert.Equal(ExitCodes.BadInput, code);
        Assert.Contains(why, error, StringComparison.Ordinal);
        Assert.DoesNotContain("is set", output, StringComparison.Ordinal);
        Assert.False(new Passphrase(_folder).IsSet);
    }

    [Fact]
    public void Piped_OneLine_IsSetAndRemovedAgain()
    {
        Assert.Equal((ExitCodes.Ok, "The passphrase is set.\n", ""), Run("correct horse battery\n", null));
        Assert.True(new Passphrase(_folder).IsSet);
        Assert.Equal((ExitCodes.Ok, "The passphrase is removed.\n", ""), Run("", null, "--remove"));
        Assert.Equal((ExitCodes.Ok, "There was no passphrase.\n", ""), Run("", null, "--remove"));
        Assert.Contains("one line on the standard input", Run("", null).Error, StringComparison.Ordinal);
    }

    private (int Code, string Output, string Error) Type(params string[] typed) => Run("", new Queue<char>(string.Concat(typed)));

    private (int Code, string Output, string Error) Run(string piped, Queue<char>? typed, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var input = new StringReader(piped);
        var shift = true;
        var code = CommandLine.Run(["passphrase", .. args, "--data", _folder], new UserConsole
        {
            In = input,
            Out = output,
            Error = error,
            OpenOut = () => Stream.Null,
            PersonTypes = typed is not null,
            PersonReads = false,
            ReadHidden = () => (shift = !shift) ? new ConsoleKeyInfo('\0', ConsoleKey.LeftArrow, false, false, false) : KeyOf(typed!.Dequeue()),
        });
        return (code, output.ToString(), error.ToString());
    }

    private static ConsoleKeyInfo KeyOf(char letter) => letter switch
    {
        '\n' => new ConsoleKeyInfo('\r', ConsoleKey.Enter, false, false, false),
        '\b' => new ConsoleKeyInfo('\b', ConsoleKey.Backspace, false, false, false),
        _ => new ConsoleKeyInfo(letter, ConsoleKey.None, false, false, false),
    };
}
