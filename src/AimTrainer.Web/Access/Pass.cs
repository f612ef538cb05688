namespace AimTrainer.Web;

/// <summary>What a browser was given to come in with; the browser's secret itself is kept only as a hash.</summary>
/// <param name="Id">Its name for people and the audit.</param>
/// <param name="Hash">SHA-256 of the secret.</param>
/// <param name="Role">Coach or bowler.</param>
/// <param name="Station">The bowler's station; null for the coach.</param>
/// <param name="Since">When it was given.</param>
/// <param name="Until">When it runs out.</param>
/// <param name="Stamp">The passphrase that it was given for; null for a bowler's.</param>
internal sealed record Pass(string Id, string Hash, Role Role, int? Station, DateTimeOffset Since, DateTimeOffset Until, string? Stamp);
