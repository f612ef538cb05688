namespace AimTrainer.Display;

/// <summary>The windows of this process, or why there can be none.</summary>
/// <param name="System">To be disposed of on the same thread; null when there is a problem.</param>
/// <param name="Problem">What is missing and how to get it, in one line.</param>
public sealed record WindowSystemStart(WindowSystem? System, string? Problem);
