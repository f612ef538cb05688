using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>A change of a lane's order, as it was asked for.</summary>
/// <param name="Change">What.</param>
/// <param name="Seen">The order that was seen; null for whatever is there.</param>
internal sealed record TurnWish(TurnChange Change, int? Seen);
