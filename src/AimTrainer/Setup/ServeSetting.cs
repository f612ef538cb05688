namespace AimTrainer.Setup;

/// <summary>A setting as it holds, for <c>serve --check</c>.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="Value">Its value.</param>
/// <param name="Source">Where it comes from.</param>
internal sealed record ServeSetting(string Name, string Value, string Source);
