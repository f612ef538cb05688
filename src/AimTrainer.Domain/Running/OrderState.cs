namespace AimTrainer.Domain;

/// <summary>Where a block stands in its order.</summary>
/// <param name="Position">Aims scheduled before this one.</param>
/// <param name="Aim">The scheduled aim, from 0.</param>
/// <param name="InARow">For how many positions it has been that aim, this one included.</param>
/// <param name="Place">For a walk its place, from 0.</param>
/// <param name="Backward">Whether the walk is on its way back.</param>
/// <param name="Visit">Counts the places a walk came to, from 0: on its way to and fro it comes to one more than once.</param>
/// <param name="ShotsHere">Shots of this visit that count.</param>
/// <param name="HoldsHere">Aims held in this visit.</param>
/// <param name="Compare">For a comparison where that stands; else null.</param>
internal readonly record struct OrderState(
    int Position, int Aim, int InARow, int Place, bool Backward, int Visit, int ShotsHere, int HoldsHere, CompareState? Compare = null);
