namespace AimTrainer.Display;

/// <summary>A key went down in a window, or is held and repeats.</summary>
/// <param name="Key">Which, by the runtime's own names.</param>
/// <param name="Shift">Whether shift is held with it.</param>
/// <param name="Repeats">Whether it was down already.</param>
public readonly record struct KeyPress(ConsoleKey Key, bool Shift, bool Repeats);
