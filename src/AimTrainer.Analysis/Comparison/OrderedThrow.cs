using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A throw with its place in the order thrown, and names that are spelled one way.</summary>
internal sealed record OrderedThrow(int Number, int Order, Shot Shot, string Ball, string Line);
