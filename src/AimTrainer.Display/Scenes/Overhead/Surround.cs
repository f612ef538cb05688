using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>The line above the picture (what to do now, how far the block is) and the one below it (who, where).</summary>
internal static class Surround
{
    private const double Gap = 0.06;

    public static void Add(ScreenInk ink, OverheadLayout layout, SessionSnapshot snapshot)
    {
        Head(ink, layout, snapshot);
        var right = $"lane {SceneWords.Whole(snapshot.Station)}"
            + (snapshot is { Block: not null, Drill: { } drill } ? $", block {SceneWords.Whole(snapshot.BlockNumber)} of {SceneWords.Whole(drill.Blocks.Count)}" : "");

        // Of the names the one who throws now is the one that must be read whole.
        string[] bowlers = snapshot.Turns is { Next: { } next, Now: { } now }
            ? [$"{now.ScreenName} throws, then {next.ScreenName}", $"{now.ScreenName}, then {next.ScreenName}", $"{now.ScreenName} throws"]
            : [snapshot.ScreenName];
        if (snapshot is { Phase: SessionPhase.Throwing, Turn: not null, Setup: { } setup })
        {
            right = $"lane {SceneWords.Whole(snapshot.Station)}";
            var shortest = $"{(setup.Simulated ? "simulated; " : "")}dry towel";
            if (BallWords.OtherThanDue(snapshot) is { } other)
            {
                Pair(ink, layout, OverheadLayout.FootBaseline, ink.Palette.Text, bold: true, right, other);
            }
            else
            {
                Pair(
                    ink, layout, OverheadLayout.FootBaseline, ink.Palette.Quiet, bold: false, right, $"{(setup.Simulated ? "Simulated. " : "")}{BallWords.Towel}", BallWords.TowelShort, shortest);
            }
        }
        else if (snapshot.Setup is { Simulated: true })
        {
            Pair(ink, layout, OverheadLayout.FootBaseline, ink.Palette.Quiet, bold: false, right, $"simulated: {bowlers[0]}", "simulated");
        }
        else
        {
            Pair(ink, layout, OverheadLayout.FootBaseline, ink.Palette.Quiet, bold: false, right, bowlers);
        }
    }

    private static void Head(ScreenInk ink, OverheadLayout layout, SessionSnapshot snapshot)
    {
        var now = snapshot.Phase switch
        {
            SessionPhase.Paused => "Wait: paused",
            SessionPhase.Ended => "The session is over",
            _ when snapshot.Turn is { } turn => $"{(turn.IsCheck ? "Lane check: throw" : "Throw")} {turn.Due.Name}",
            _ when snapshot is { Throws: 0, Finished: not null } => $"Block {SceneWords.Whole(snapshot.BlockNumber)}: throw shot {SceneWords.Whole(snapshot.NextNumber)}",
            _ => SceneWords.Throw(snapshot.NextNumber, snapshot.Shown is { IsLine: true }),
        };
        var shots = snapshot.Block?.Until.Shots;
        var thrown = SceneWords.Whole(snapshot.Throws);
        var progress = snapshot.Block is null ? ""
            : snapshot.Turn is { } at ? $"line {SceneWords.Whole(at.Line)} of {SceneWords.Whole(at.Lines)}" : shots is { } of ? $"{thrown} of {SceneWords.Whole(of)}" : $"{thrown} thrown";
        var shorter = snapshot is { Phase: SessionPhase.Throwing, Turn: null } ? $"Throw shot {SceneWords.Whole(snapshot.NextNumber)}" : now;
        Pair(ink, layout, OverheadLayout.HeadBaseline, ink.Palette.Text, bold: true, progress, now, shorter);
        if (shots is { } all)
        {
            var share = Math.Clamp((double)snapshot.Throws / all, 0, 1);
            ink.Box(OverheadLayout.Left, OverheadLayout.ProgressTop, layout.Right, OverheadLayout.ProgressTop + 0.008, ink.Palette.Panel);
            var reached = OverheadLayout.Left + ((layout.Right - OverheadLayout.Left) * share);
            ink.Box(OverheadLayout.Left, OverheadLayout.ProgressTop, reached, OverheadLayout.ProgressTop + 0.008, ink.Palette.Target);
        }
    }

    /// <summary>Words at the left and the right end of a line; of the left ones the first way that fits.</summary>
    private static void Pair(ScreenInk ink, OverheadLayout layout, double baseline, Colour colour, bool bold, string right, params ReadOnlySpan<string> left)
    {
        if (right.Length > 0)
        {
            ink.Write(right, layout.Right, baseline, ScreenInk.Small, colour, bold, TextAlign.Right);
        }

        var room = layout.Right - OverheadLayout.Left - TextRuler.Width(right, ScreenInk.Small, bold) - Gap;
        var text = TextFit.First(room, ScreenInk.Small, bold, left);
        if (text.Length > 0)
        {
            ink.Write(text, OverheadLayout.Left, baseline, ScreenInk.Small, colour, bold);
        }
    }
}
