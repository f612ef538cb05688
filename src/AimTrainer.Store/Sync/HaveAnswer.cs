using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>How far sessions have come at the chain.</summary>
/// <param name="Messages">The chain's <see cref="SyncFormat.Messages"/>.</param>
/// <param name="Events">The chain's <see cref="SyncFormat.Events"/>.</param>
/// <param name="Center">What the chain calls the center.</param>
/// <param name="Have">Those that the chain has of the sessions that were asked about; a session that is not named is not there.</param>
/// <param name="Erase">Sessions of this center that somebody asked the chain to erase, and the center has not yet erased.</param>
public sealed record HaveAnswer(int Messages, int Events, string Center, ValueList<HavePosition> Have, ValueList<string> Erase);
