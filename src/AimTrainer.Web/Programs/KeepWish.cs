namespace AimTrainer.Web;

/// <summary>How long sessions are to be kept.</summary>
/// <param name="Months">Months; null for ever.</param>
internal sealed record KeepWish(int? Months);
