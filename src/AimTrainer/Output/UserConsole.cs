namespace AimTrainer.Output;

/// <summary>Where words come from and go to: the terminal, a pipe, or a test's own readers and writers.</summary>
internal sealed record UserConsole
{
    public required TextReader In { get; init; }

    public required TextWriter Out { get; init; }

    public required TextWriter Error { get; init; }

    /// <summary>Standard output as bytes, for long documents; the caller closes it and writes nothing more to <see cref="Out"/>.</summary>
    public required Func<Stream> OpenOut { get; init; }

    /// <summary>Whether a person types the input; else it is a file or a pipe.</summary>
    public required bool PersonTypes { get; init; }

    /// <summary>Whether the output goes to a terminal: only then there are colours and line ends that fit its width.</summary>
    public required bool PersonReads { get; init; }

    /// <summary>The thread that ran the command line; windows are opened there.</summary>
    public MainThread MainThread { get; } = new();

    /// <summary>The process's own.</summary>
    public static UserConsole OfProcess() => new()
    {
        In = Console.In,
        Out = Console.Out,
        Error = Console.Error,
        OpenOut = Console.OpenStandardOutput,
        PersonTypes = !Console.IsInputRedirected,
        PersonReads = !Console.IsOutputRedirected,
    };
}
