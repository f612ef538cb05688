namespace AimTrainer.Calibration;

/// <summary>Which key means which action. The only place that knows, so that the help and the window say the same.</summary>
public static class PlacingKeys
{
    /// <summary>Every key with what it does, for a help line.</summary>
    public static IReadOnlyList<(string Key, string Does)> Help { get; } =
    [
        ("Arrows", "half a pixel"),
        ("Shift + arrows", "twelve pixels"),
        ("Enter", "set, on to the next"),
        ("Page Down, Up", "next, last mark"),
        ("S", "leave it out"),
        ("Delete", "drop it"),
        ("U", "undo"),
        ("T", "turn the arrows"),
        ("0, 1, 2", "lens terms"),
        ("A", "accept the map"),
        ("Esc", "give up"),
    ];

    /// <summary>The action of a key; null for a key that means nothing here.</summary>
    /// <param name="key">The key.</param>
    /// <param name="shift">Whether Shift is held.</param>
    /// <param name="state">Where the calibration stands: next and last count from its mark.</param>
    public static PlacingAction? ActionFor(ConsoleKey key, bool shift, MarkPlacing state)
    {
        var step = shift ? NudgeStep.Coarse : NudgeStep.Fine;
        return key switch
        {
            ConsoleKey.LeftArrow => new PlacingAction.Nudge(NudgeDirection.Left, step),
            ConsoleKey.RightArrow => new PlacingAction.Nudge(NudgeDirection.Right, step),
            ConsoleKey.UpArrow => new PlacingAction.Nudge(NudgeDirection.Up, step),
            ConsoleKey.DownArrow => new PlacingAction.Nudge(NudgeDirection.Down, step),
            ConsoleKey.Enter => new PlacingAction.Set(),
            ConsoleKey.PageDown => new PlacingAction.GoTo(((state.Current + 1) % state.Marks.Count) + 1),
            ConsoleKey.PageUp => new PlacingAction.GoTo(((state.Current + state.Marks.Count - 1) % state.Marks.Count) + 1),
            ConsoleKey.S => new PlacingAction.Skip(),
            ConsoleKey.Delete => new PlacingAction.Drop(),
            ConsoleKey.U => new PlacingAction.Undo(),
            ConsoleKey.T => new PlacingAction.Turn(),
            ConsoleKey.D0 or ConsoleKey.NumPad0 => new PlacingAction.ChooseDistortion(0),
            ConsoleKey.D1 or ConsoleKey.NumPad1 => new PlacingAction.ChooseDistortion(1),
            ConsoleKey.D2 or ConsoleKey.NumPad2 => new PlacingAction.ChooseDistortion(2),
            ConsoleKey.A => new PlacingAction.Accept(),
            ConsoleKey.Escape => new PlacingAction.Abandon(),
            _ => null,
        };
    }
}
