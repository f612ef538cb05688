namespace AimTrainer.Domain;

/// <summary>What came of reading a file: its content, or everything that is wrong with it.</summary>
/// <typeparam name="T">What the file describes.</typeparam>
/// <param name="Value">The content; null when anything is wrong.</param>
/// <param name="Problems">Everything that is wrong, in the file's order; empty when there is a value.</param>
public sealed record FileRead<T>(T? Value, ValueList<FileProblem> Problems)
    where T : class;
