using System.Text.Json.Serialization;

namespace AimTrainer.Calibration;

/// <summary>What a person does in a calibration, by keys or from elsewhere. Written as JSON with <c>kind</c> for the sort of action.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Nudge), "nudge")]
[JsonDerivedType(typeof(GoTo), "goTo")]
[JsonDerivedType(typeof(Set), "set")]
[JsonDerivedType(typeof(Skip), "skip")]
[JsonDerivedType(typeof(Drop), "drop")]
[JsonDerivedType(typeof(Undo), "undo")]
[JsonDerivedType(typeof(Turn), "turn")]
[JsonDerivedType(typeof(ChooseDistortion), "chooseDistortion")]
[JsonDerivedType(typeof(Check), "check")]
[JsonDerivedType(typeof(Accept), "accept")]
[JsonDerivedType(typeof(Abandon), "abandon")]
public abstract record PlacingAction
{
    private PlacingAction()
    {
    }

    /// <summary>Moves the crosshair.</summary>
    /// <param name="Direction">Where to.</param>
    /// <param name="Step">How far.</param>
    public sealed record Nudge(NudgeDirection Direction, NudgeStep Step) : PlacingAction;

    /// <summary>Goes to a mark.</summary>
    /// <param name="Mark">Its number, from 1.</param>
    public sealed record GoTo(int Mark) : PlacingAction;

    /// <summary>Sets the mark gone to at the crosshair, and goes to the next that is neither set nor skipped.</summary>
    public sealed record Set : PlacingAction;

    /// <summary>Leaves the mark gone to out, and goes to the next.</summary>
    public sealed record Skip : PlacingAction;

    /// <summary>Takes back that the mark gone to is set or skipped.</summary>
    public sealed record Drop : PlacingAction;

    /// <summary>Takes back the last action that changed marks, distortion or the end; moving the crosshair is not taken back.</summary>
    public sealed record Undo : PlacingAction;

    /// <summary>Turns the directions by a quarter, for a picture that stands on its side or its head as seen from the approach.</summary>
    public sealed record Turn : PlacingAction;

    /// <summary>Chooses how many terms of lens distortion are fitted.</summary>
    /// <param name="Terms">0, 1 or 2.</param>
    public sealed record ChooseDistortion(int Terms) : PlacingAction;

    /// <summary>Shows the check picture over the fit so far, or goes back to the marks; whatever moves the crosshair or changes a mark goes back too.</summary>
    /// <param name="On">Whether it is shown.</param>
    public sealed record Check(bool On) : PlacingAction;

    /// <summary>Takes the map.</summary>
    public sealed record Accept : PlacingAction;

    /// <summary>Gives up: the map that was used before stays.</summary>
    public sealed record Abandon : PlacingAction;
}
