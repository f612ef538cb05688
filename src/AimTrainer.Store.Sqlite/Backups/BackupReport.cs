namespace AimTrainer.Store.Sqlite;

/// <summary>What a backup or a restore did.</summary>
/// <param name="File">The backup that was written, or restored from, as a full path.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sessions">How many sessions are in it.</param>
/// <param name="Replaced">For a restore: where the record that was there before is kept; null when there was none.</param>
public sealed record BackupReport(string File, long Bytes, long Sessions, string? Replaced = null);
