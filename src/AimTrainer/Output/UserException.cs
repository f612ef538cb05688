namespace AimTrainer.Output;

/// <summary>Ends a command with words for the user instead of a stack trace.</summary>
internal sealed class UserException(string message, int exitCode = ExitCodes.BadInput) : Exception(message)
{
    public int ExitCode { get; } = exitCode;

    /// <summary>Several problems, a line each.</summary>
    public static UserException Of<T>(IEnumerable<T> problems) => new(string.Join(Environment.NewLine, problems));
}
