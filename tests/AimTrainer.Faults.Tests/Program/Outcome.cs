namespace AimTrainer.Faults.Tests;

/// <summary>What a run of the program came to.</summary>
internal sealed record Outcome(int ExitCode, IReadOnlyList<string> Lines, string Error)
{
    /// <summary>Standard output as one text.</summary>
    public string Text => string.Join('\n', Lines);

    /// <summary>The same when all went well, for a chain of calls.</summary>
    public Outcome Good()
    {
        Assert.True(ExitCode == 0, $"exit {ExitCode}\n{Text}\n{Error}");
        return this;
    }

    /// <summary>Checks that it failed as it should: exit code 1, words for a person, no stack trace.</summary>
    public void FailedSaying(string words)
    {
        Assert.True(ExitCode == 1, $"exit {ExitCode}, not 1\n{Text}\n{Error}");
        Assert.Contains(words, Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        Assert.DoesNotContain(Lines, line => AcknowledgedStep.TryParse(line) is not null);
    }
}
